import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { ask } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { kindsQuery } from '../shelf/queries.ts';
import { LimitsForm } from './limits-form.tsx';
import { inside, type Machine, sealsQuery } from './queries.ts';
import { useSeamText } from './words.ts';
import './seam.css';

/** The machines that close containers, and what the makers of cans allow of a seam. */
export function Machines() {
  const t = useSeamText();
  const { storehouse } = useHouse();
  useTitle(t.machines);
  const reading = useQuery(sealsQuery({ storehouse }));
  const kinds = useQuery(kindsQuery({ storehouse }));
  return (
    <div className="seals stack">
      <Link className="who" to="/s/$storehouse/packing" params={{ storehouse }}>
        <BackIcon />
        {t.packing}
      </Link>
      <Loaded isPage reading={joined(reading, kinds)}>
        {([{ machines, limits }, { containerKinds }]) => (
          <>
            <h1>{t.machinesStand(machines.length, machines.filter(({ outSince }) => outSince).length)}</h1>
            <ul className="list">
              {machines.map((machine) => (
                <MachineRow key={machine.id} machine={machine} />
              ))}
            </ul>
            <AddMachine />
            <LimitsForm kinds={containerKinds} limits={limits} />
          </>
        )}
      </Loaded>
    </div>
  );
}

function MachineRow({ machine }: { machine: Machine }) {
  const t = useSeamText();
  const { format } = useHouse();
  return (
    <li>
      <b>{machine.name}</b>
      <span className="soft block">{t.machineKinds[machine.kind as keyof typeof t.machineKinds]}</span>
      {machine.outSince === null ? null : (
        <p className="said">{t.outSays(machine.name, format.instant(machine.outSince))}</p>
      )}
    </li>
  );
}

const KINDS = ['can-seamer', 'heat-sealer', 'vacuum-sealer'] as const;

function AddMachine() {
  const t = useSeamText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { name, kind },
    change,
    reset,
  } = useDraft('seam-machine', { name: '', kind: 'can-seamer' as (typeof KINDS)[number] });
  const adding = useMutation({
    mutationFn: () => ask(inside['seal-machines'].$post({ param: { storehouse }, json: { name, kind } })),
    onSuccess: async () => {
      reset();
      await queries.invalidateQueries({ queryKey: ['packing'] });
    },
  });
  const problems = problemsOf(adding.error);
  return (
    <Form onSend={() => adding.mutate()}>
      <h2>{t.addMachine}</h2>
      <div className="pair">
        <Field
          label={t.name}
          value={name}
          problem={problems.name}
          onChange={(event) => change({ name: event.target.value })}
        />
        <Choice
          label={t.machineKind}
          value={kind}
          options={KINDS.map((value) => ({ value, name: t.machineKinds[value] }))}
          onChange={(value) => change({ kind: KINDS.find((one) => one === value) ?? 'can-seamer' })}
        />
      </div>
      <p className="soft">{t.machineCaution}</p>
      <ProblemSaid error={problems.name ? null : adding.error} />
      <button type="submit" className="btn" disabled={adding.isPending || name.trim() === ''}>
        {t.add}
      </button>
    </Form>
  );
}
