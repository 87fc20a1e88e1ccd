/** What a photo is asked for with, and what is said of it. */
export const photoWords = {
  photo: 'Photo',
  takePhoto: 'Take a photo',
  choosePhoto: 'Choose a photo',
  keepingPhoto: 'Keeping the photo …',
  whatGoesWithFind: 'What goes with the find',
  leavePhotoOut: 'Leave the photo out',
  photoIsOnServer: 'The photo is on the server, which is out of reach.',
};
