import type { Context } from '../../platform/context.ts';
import { type PageQuery, pageOf } from '../../platform/paging.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { presentContainerKind } from './present.ts';
import {
  findContainerKindByCode,
  insertContainerKind,
  listContainerKinds,
  lockContainerKind,
  updateContainerKind,
} from './queries.ts';
import type { ContainerKindEdit, ContainerKindWish } from './schema.ts';

/** A page of container kinds in the order of their codes. */
export function findContainerKinds(context: Context, query: PageQuery) {
  return withTx(context, async (tx) =>
    pageOf(
      await listContainerKinds(tx, context.actor.storehouseId, query),
      query.limit,
      (kind) => kind.kindCode,
    ),
  );
}

/** Adds a container kind of the group's own. */
export function addContainerKind(context: Context, { traits, ...wish }: ContainerKindWish) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    if (await findContainerKindByCode(tx, storehouseId, wish.kindCode))
      throw fieldProblem(
        'already-there',
        'kindCode',
        `There is a kind with the code ${wish.kindCode} already.`,
      );
    return insertContainerKind(tx, {
      ...wish,
      ...traits,
      storehouseId,
      nameEs: wish.nameEs ?? wish.nameEn,
      isOwn: true,
    });
  });
}

/** Sets what a kind weighs empty and costs, since published kinds come without either, and of an own kind what it does. */
export function editContainerKind(
  context: Context,
  kindId: string,
  { version, traits, ...change }: ContainerKindEdit,
) {
  return withTx(context, async (tx) => {
    const kind = await lockContainerKind(tx, context.actor.storehouseId, kindId);
    if (kind.version !== version) throw new Problem('stale-version', { newer: presentContainerKind(kind) });
    if (traits && !kind.isOwn) throw new Problem('kind-is-published');
    return updateContainerKind(tx, kind, { ...change, ...traits });
  });
}
