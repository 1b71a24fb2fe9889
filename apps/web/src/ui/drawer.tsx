import { useLocation } from '@tanstack/react-router';
import { type ReactNode, useEffect, useRef } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useText } from '../text/taste.ts';
import './drawer.css';
import type { House } from './house.ts';
import { Elsewhere } from './places-list.tsx';

/** The places that have no room in a phone's bar. It holds the focus, closes by Escape and once a place is chosen. */
export default function Drawer({
  house,
  onClose,
  children,
}: {
  house: House;
  onClose: () => void;
  children: ReactNode;
}) {
  const t = useText();
  const { href } = useLocation();
  const openedAt = useRef(href);
  useEffect(() => {
    if (openedAt.current !== href) onClose();
  }, [href, onClose]);
  return (
    <ModalOverlay
      className="drawer-back"
      isOpen
      isDismissable
      onOpenChange={(isOpen) => (isOpen ? undefined : onClose())}
    >
      <Modal className="drawer">
        <Dialog>
          <div className="weave" />
          <div className="row place">
            <Heading slot="title">{t.morePlaces}</Heading>
            <button type="button" className="btn quiet" onClick={onClose}>
              {t.close}
            </button>
          </div>
          <nav aria-label={t.morePlaces}>{children}</nav>
          <p className="soft">
            {house.personName}
            {house.householdName === '' ? '' : `, ${house.householdName}`}
          </p>
          <Elsewhere house={house} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
