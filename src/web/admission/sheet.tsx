import { useEffect, useState } from 'preact/hooks';
import type { Problem, Role } from '../../app/index.ts';
import { Refused } from '../parts.tsx';
import { type Code, change, type Me, me, newCode, type Paired, pairedDevices } from './asked.ts';
import { Forget } from './forget.tsx';
import { Qr } from './qr.tsx';
import './devices.css';
import { admissionWords } from '../words/admission.tsx';

export type DevicesProps = { readonly who: string };

const ROLES: readonly (readonly [Role, string])[] = [
  ['mechanic', admissionWords.wholeRecord],
  ['driver', admissionWords.runningAndWhatWasFound],
  ['scrutineer', admissionWords.readsAndSigns],
  ['owner', admissionWords.allOfItAndOther],
];

/** Which devices may come in over the network: a code for one more, another role, or out. */
export function Devices({ who }: DevicesProps) {
  const [here, setHere] = useState<Me>();
  const [devices, setDevices] = useState<readonly Paired[]>();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const read = async (): Promise<void> => {
    const [mine, all] = await Promise.all([me(), pairedDevices()]);
    if (mine.ok) setHere(mine.value);
    if (all.ok) setDevices(all.value.devices);
    setProblems(all.ok ? [] : all.problems);
  };
  useEffect(() => void read(), []);
  const inside = devices?.filter(one => one.revoked === undefined) ?? [];
  const outside = devices?.filter(one => one.revoked !== undefined) ?? [];
  return (
    <>
      <h1>{admissionWords.devices}</h1>
      <p>{admissionWords.onMachineThatKeepsBook}</p>
      <Refused problems={problems} />
      {devices && here && <OneMore reached={here.reached} onNews={read} />}
      {devices && (
        <section class="group">
          <h2>{admissionWords.letIn}</h2>
          {inside.length === 0 ? (
            <p class="soft">{admissionWords.noneYet}</p>
          ) : (
            <ul class="devices">
              {inside.map(one => (
                <Device key={one.id} one={one} mine={one.id === here?.id} onNews={read} onRefused={setProblems} />
              ))}
            </ul>
          )}
        </section>
      )}
      {outside.length > 0 && (
        <section class="group">
          <h2>{admissionWords.putOut}</h2>
          <ul class="devices">
            {outside.map(one => (
              <li key={one.id}>
                <b>{one.name}</b>{' '}
                <span class="soft">{admissionWords.sinceWhatItWroteStays(one.revoked?.slice(0, 10) ?? '')}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {devices && <Forget who={who} onDone={read} />}
    </>
  );
}

function OneMore({ reached, onNews }: { readonly reached: readonly string[]; readonly onNews: () => Promise<void> }) {
  const [role, setRole] = useState<Role>('mechanic');
  const [code, setCode] = useState<Code>();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [best] = reached;
  if (best === undefined) return <p class="note">{admissionWords.onlyThisMachineReaches()}</p>;
  const make = async (): Promise<void> => {
    const answer = await newCode(role);
    if (answer.ok) setCode(answer.value);
    setProblems(answer.ok ? [] : answer.problems);
  };
  return (
    <section class="group one-more">
      <h2>{admissionWords.oneMore}</h2>
      <fieldset class="choices roles">
        <legend>{admissionWords.as}</legend>
        {ROLES.map(([name, may]) => (
          <label key={name} class="role">
            <input type="radio" name="role" checked={role === name} onChange={() => setRole(name)} />
            <span>
              <b>{name}</b>: {may}
            </span>
          </label>
        ))}
      </fieldset>
      <Refused problems={problems} />
      <button type="button" class="button main big" onClick={() => void make()}>
        {code ? admissionWords.anotherCode : admissionWords.showCode}
      </button>
      {code && (
        <div class="shown" role="status">
          <Qr text={`${best}#/pair/${code.code}`} />
          <div>
            <p>{admissionWords.onDeviceOnSameNetwork}</p>
            <p class="address">{best}</p>
            <p>{admissionWords.andType}</p>
            <p class="big-code">{code.code}</p>
            <p class="soft">
              {admissionWords.itLetsInOneWithin(
                code.role,
                best.startsWith('https:') ? admissionWords.deviceWarnsFirst : '',
              )}
            </p>
            <button type="button" class="button" onClick={() => void onNews()}>
              {admissionWords.itIsInLookAgain}
            </button>
          </div>
        </div>
      )}
    </section>
  );
}

type DeviceProps = {
  readonly one: Paired;
  readonly mine: boolean;
  readonly onNews: () => Promise<void>;
  readonly onRefused: (problems: readonly Problem[]) => void;
};

function Device({ one, mine, onNews, onRefused }: DeviceProps) {
  const [sure, setSure] = useState(false);
  const say = async (what: { role?: Role; revoke?: true }): Promise<void> => {
    const answer = await change(one.id, what);
    if (answer.ok) await onNews();
    else onRefused(answer.problems);
  };
  return (
    <li>
      <div>
        <b>{one.name}</b>
        {mine && admissionWords.thisOne}
        {one.team !== '' && admissionWords.team(one.team)}
        <p class="soft">
          {admissionWords.letInLastHere(
            one.paired.slice(0, 10),
            one.seen,
            one.chains.length > 0 ? admissionWords.inBook(one.chains.join(', ')) : '',
          )}
        </p>
      </div>
      <div class="acts">
        <select
          aria-label={admissionWords.role(one.name)}
          value={one.role}
          onChange={e => void say({ role: e.currentTarget.value as Role })}
        >
          {ROLES.map(([name]) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
        {sure ? (
          <>
            <button type="button" class="button main" onClick={() => void say({ revoke: true })}>
              {admissionWords.yesOut}
            </button>
            <button type="button" class="button plain" onClick={() => setSure(false)}>
              {admissionWords.no}
            </button>
          </>
        ) : (
          <button
            type="button"
            class="button"
            onClick={() => setSure(true)}
            aria-label={admissionWords.putThisOut(one.name)}
          >
            {admissionWords.putOut}
          </button>
        )}
      </div>
    </li>
  );
}
