import { Glance } from '../../ui/glance.tsx';
import { MayEat } from './may-eat.tsx';
import { OnOffer } from './on-offer.tsx';
import { OwnShare } from './own-share.tsx';
import { Recalled } from './recalled.tsx';
import { ToPledge } from './to-pledge.tsx';
import { useAskedText } from './words.ts';

/** What a household asks beside what its home page leads with (job map 3.5, questions 4, 5 and 7 to 10), each with its answer. */
export function Asked() {
  const words = useAskedText();
  return (
    <section className="stack">
      <h2>{words.title}</h2>
      <Glance>
        <ToPledge />
        <Recalled />
        <OwnShare />
        <MayEat />
        <OnOffer />
      </Glance>
    </section>
  );
}
