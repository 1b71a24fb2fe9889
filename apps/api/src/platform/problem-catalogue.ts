import type { ContentfulStatusCode } from 'hono/utils/http-status';

type Entry = { readonly status: ContentfulStatusCode; readonly title: string };

const refuse = (status: ContentfulStatusCode, title: string): Entry => ({ status, title });

/** Every refusal: one code, one status, and the same words each time. A code, once given, keeps its meaning. */
export const PROBLEMS = {
  // The request itself
  'invalid-input': refuse(400, 'Something in what was sent is missing or not possible.'),
  'not-json': refuse(400, 'The request is not readable JSON.'),
  'body-too-large': refuse(413, 'The request is larger than this address accepts.'),
  'idempotency-key-missing': refuse(
    400,
    'Sending this needs an Idempotency-Key, so that a retry counts once.',
  ),
  'idempotency-key-reused': refuse(409, 'This Idempotency-Key was used before for something else.'),
  'origin-refused': refuse(403, 'The request came from another site.'),
  'not-found': refuse(404, 'There is nothing at this address.'),
  'method-not-allowed': refuse(405, 'This address does not answer that method.'),
  'too-many-attempts': refuse(429, 'Too many attempts. Wait a little and try again.'),
  'busy-retry': refuse(503, 'The book was busy with the same thing. Try again.'),
  'not-ready': refuse(503, 'The database does not answer at the moment.'),
  unexpected: refuse(500, 'Something went wrong on our side. Nothing was changed.'),
  // Who is asking
  'not-signed-in': refuse(401, 'Sign in first.'),
  'sign-in-failed': refuse(401, 'The e-mail address or the password is wrong.'),
  'duty-missing': refuse(403, 'Your duties in this storehouse do not include this.'),
  'household-needed': refuse(403, 'Only a person of a household can do this.'),
  'not-your-household': refuse(403, 'This belongs to another household.'),
  'helper-grant-missing': refuse(403, 'You have no right in force to act for this household.'),
  'already-set-up': refuse(409, 'This server is set up already. Ask its coordinator for an invitation.'),
  'email-taken': refuse(409, 'There is a login with this e-mail address already.'),
  'password-too-weak': refuse(422, 'Choose a longer password.'),
  'invitation-not-valid': refuse(410, 'This invitation has been used, withdrawn, or has run out.'),
  'already-a-member': refuse(409, 'You belong to this storehouse already.'),
  // Not here, or gone stale
  'storehouse-not-found': refuse(404, 'There is no such storehouse for you.'),
  'thing-not-found': refuse(404, 'There is no such thing in this storehouse.'),
  'stale-version': refuse(409, 'Somebody changed this since you read it. Look at the newer state first.'),
  'settlement-moved': refuse(
    409,
    'Something was bought, counted or poured since this was shown. Look at what it would post now.',
  ),
  'already-there': refuse(409, 'There is one of these already.'),
  'in-use': refuse(409, 'Something else still depends on this.'),
  'food-is-published': refuse(
    409,
    'The figures of this food are published and stay as they are. Add a food of your own instead.',
  ),
  'kind-is-published': refuse(
    409,
    'What this kind of container does is published and stays as it is. Add a kind of your own instead.',
  ),
  'readings-overlap': refuse(409, 'Some of these days are in the record of this place already.'),
  // People
  'duties-not-separate': refuse(
    409,
    'The reviewer may not be the treasurer nor live in the treasurer’s household.',
  ),
  'last-of-duty': refuse(409, 'Somebody else must hold this duty before it can end.'),
  'household-not-settled': refuse(
    409,
    'The household can leave once what it owes, holds and is promised is settled.',
  ),
  'household-has-left': refuse(409, 'This household has left the storehouse.'),
  // A buy
  'buy-stage-wrong': refuse(409, 'The buy is not at a stage that allows this.'),
  'buy-guard-unmet': refuse(409, 'The buy can’t move on yet. What is missing is listed.'),
  'deadline-passed': refuse(409, 'The gathering has closed.'),
  'quote-not-valid': refuse(409, 'The quote is not valid for this.'),
  'pledge-not-in-order': refuse(422, 'Least, wanted and most are not in order.'),
  'pledge-off-step': refuse(422, 'The mass is not a whole number of steps.'),
  'already-pledged': refuse(
    409,
    'The household has pledged for this food already. Change that pledge instead.',
  ),
  'second-login-needed': refuse(409, 'A second person must agree to this.'),
  'rule-frozen': refuse(409, 'The rules of this buy were frozen when it was fixed.'),
  // Landing and sharing out
  'delivery-finished': refuse(409, 'This delivery is finished. What comes later is a further part of it.'),
  'bag-of-another-buy': refuse(409, 'This bag belongs to another buy.'),
  'bag-already-weighed': refuse(409, 'This bag has been weighed already.'),
  'bag-on-hold': refuse(409, 'The bag is on hold. Nothing leaves it until it is released.'),
  'on-hold': refuse(409, 'Something in this is on hold, so it stays as it is until that is released.'),
  'already-on-hold': refuse(409, 'This is on hold already.'),
  'nothing-to-hold': refuse(409, 'Nothing that is or was here falls under this.'),
  'bag-already-held': refuse(409, 'The bag is on hold already.'),
  'hold-ended': refuse(409, 'This hold has ended already.'),
  'not-enough-left': refuse(409, 'There is not enough left for that.'),
  'does-not-add-up': refuse(422, 'The figures do not add up.'),
  'already-split': refuse(409, 'This has been split already.'),
  'already-collected': refuse(409, 'This pick-up has taken place already.'),
  'outcome-contradicts': refuse(422, 'What was found leaves no outcome as good as that.'),
  'intake-refused': refuse(422, 'This stock is not taken in.'),
  'inspection-forbids': refuse(409, 'What was found in this container does not allow that.'),
  'over-capacity': refuse(422, 'The container can’t hold that much.'),
  'seam-limits-missing': refuse(
    409,
    'Nobody has written down what the maker of this can allows. A seam is judged by that alone.',
  ),
  'machine-is-out': refuse(
    409,
    'The machine that closed these is out. They are let go as good once it has passed three checks in a row.',
  ),
  'still-in-doubt': refuse(409, 'This did not pass, so it is not let go as good.'),
  'line-is-stopped': refuse(
    409,
    'The machine of this line is out. Nothing more is closed with it until three checks in a row have passed.',
  ),
  'too-young-for-machine': refuse(
    409,
    'Nobody under 16 works the seamer or the sealing bar, nor answers for a seal.',
  ),
  'container-ended': refuse(409, 'This container’s code has ended: what was in it stands in a new one.'),
  'label-used': refuse(409, 'A container was filled under this label already.'),
  'label-does-not-fit': refuse(409, 'This label was made for something else.'),
  'container-in-doubt': refuse(409, 'The seam of this container is in doubt. Somebody answers for it first.'),
  'lid-too-early': refuse(409, 'The lid of a jar tells nothing before it was shut for a day.'),
  'lid-found-loose': refuse(409, 'The lid of a jar was found loose. It is closed again before it can hold.'),
  'place-full': refuse(409, 'The shelves of this place carry no more. Set some of it somewhere else.'),
  'container-offered': refuse(
    409,
    'This is offered to others. Take the offer back first, or wait until it closes.',
  ),
  'container-opened': refuse(409, 'This has been opened. Only what is still shut is offered to others.'),
  'offer-taken': refuse(409, 'Somebody else has taken this already.'),
  'offer-over': refuse(409, 'This offer is over.'),
  'offer-is-yours': refuse(409, 'This is your own offer. Take it back instead.'),
  'not-your-turn': refuse(409, 'It is others’ turn now.'),
  'cost-unknown': refuse(409, 'The book does not know what this cost. Name an amount, or give it.'),
  'nothing-to-label': refuse(409, 'There is no container with anything in it to label.'),
  'treatment-does-not-fit': refuse(422, 'This treatment does not suit what is to be packed.'),
  'another-lot': refuse(409, 'A container holds one lot only.'),
  'claim-settled': refuse(409, 'This claim has been settled already.'),
  // Giving
  'card-accepts-nothing': refuse(422, 'Under this card the pantry would take nothing.'),
  'gift-refused': refuse(409, 'This can’t be given like that. What forbids it is listed.'),
  // Packing
  'mix-moved': refuse(409, 'What runs together has changed since you saw it. Look at it again.'),
  'session-stage-wrong': refuse(409, 'The packing session is not at a stage that allows this.'),
  'line-taken': refuse(409, 'No line is free at that time.'),
  'allergen-clash': refuse(409, 'Somebody must not meet what runs before their food.'),
  // Equipment
  'equipment-taken': refuse(
    409,
    'It is taken at that time. Free times that follow are listed, if there are any.',
  ),
  'equipment-unfit': refuse(409, 'It can’t be lent as it is. What must be put right first is listed.'),
  'already-booked': refuse(409, 'The household has booked this already. Give that time back first.'),
  'already-waiting': refuse(409, 'The household waits for this already.'),
  'booking-not-open': refuse(409, 'This booking does not stand any more.'),
  'not-out': refuse(409, 'This is not out.'),
  'damage-not-now': refuse(409, 'Damage is charged between a return and the next loan.'),
  'relay-refused': refuse(409, 'This can’t be handed straight on.'),
  // The book
  'currency-mixed': refuse(422, 'The storehouse keeps one currency. Put a foreign price in the note.'),
  'cannot-sign': refuse(409, 'This can’t be signed as it stands.'),
  'period-unsettled': refuse(409, 'These days can’t be closed yet. What must be settled first is listed.'),
  'period-closed': refuse(409, 'The books are closed through that day. Post it today and name the old day.'),
  'account-closed': refuse(409, 'This account is closed at 0.00 and stays there.'),
  'already-reversed': refuse(409, 'This entry has been reversed already.'),
  'cannot-reverse': refuse(409, 'This entry can’t be reversed while others depend on it.'),
  'amount-too-large': refuse(422, 'The amount is larger than the book can hold.'),
  'nothing-to-post': refuse(409, 'There is nothing to post.'),
  'line-already-matched': refuse(409, 'This line of the bank has found its place already.'),
  'entry-already-matched': refuse(409, 'Another line of the bank is matched with this entry already.'),
  'second-receipt': refuse(409, 'This may be a second receipt for the same thing. Say why it is not one.'),
  'import-has-errors': refuse(409, 'These sheets can’t be brought over as they are.'),
  'import-leaned-on': refuse(409, 'Something leans on what this import made, so it can’t be taken back.'),
  'import-taken-back': refuse(409, 'This import was taken back already.'),
  'import-not-as-seen': refuse(
    409,
    'The sheets or the book changed since they were tried. Try them again and look at what they do now.',
  ),
  'looks-like-a-duplicate': refuse(409, 'The same amount was received from this household within two days.'),
} as const satisfies Record<string, Entry>;

export type ProblemCode = keyof typeof PROBLEMS;
