import type { ReactNode } from 'react';

function Icon({ children }: { children: ReactNode }) {
  return (
    <svg
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.6"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      {children}
    </svg>
  );
}

export const HomeIcon = () => (
  <Icon>
    <path d="M4 11 12 4l8 7v9h-5v-6H9v6H4z" />
  </Icon>
);
export const BuysIcon = () => (
  <Icon>
    <path d="M6 8c-2 4-2.5 8-1 12h14c1.5-4 1-8-1-12M6 8c1.5-1 2-2.5 1.5-4 3 1 6 1 9 0-.5 1.5 0 3 1.5 4M6 8h12M8.5 12h7M8.500 13.800h7" />
  </Icon>
);
export const PackingIcon = () => (
  <Icon>
    <path d="M6 6c0-1.500 12-1.500 12 0v12c0 1.500-12 1.500-12 0zM6 6c0 1.500 12 1.500 12 0M6 10.500c0 1.500 12 1.500 12 0M6 14.500c0 1.500 12 1.500 12 0" />
  </Icon>
);
export const BooksIcon = () => (
  <Icon>
    <path d="M4 20h16M6 20V10h4v10M14 20V4h4v16M6 7h4M14 8h4" />
  </Icon>
);
export const StatementIcon = () => (
  <Icon>
    <path d="M5 4h13v16H5zM8.5 4v16M11.5 8.5h4M11.5 12h4" />
  </Icon>
);
export const HouseholdIcon = () => (
  <Icon>
    <circle cx="9" cy="8" r="3" />
    <path d="M3.5 19c.5-4 2.500-6 5.500-6s5 2 5.500 6M16 5.500a3 3 0 0 1 0 5.500M17.500 13.500c2 .8 3 2.600 3.200 5.500" />
  </Icon>
);
export const CoverageIcon = () => (
  <Icon>
    <path d="M4 4v16M4 6.500h13M4 12h16M4 17.500h8" />
  </Icon>
);
export const ShelfIcon = () => (
  <Icon>
    <path d="M3 12h18M3 20h18M6 6h4v6H6zM13 8h5v4h-5zM5 15h4v5H5zM12 15h3v5h-3zM17 16h3v4h-3z" />
  </Icon>
);
export const EquipmentIcon = () => (
  <Icon>
    <path d="M5 20h14M8 20v-6h8v6M12 14V8M8 8h8V4H8zM16 6h4v3" />
  </Icon>
);
export const GivingIcon = () => (
  <Icon>
    <path d="M4 14c3-2 5-1 7 1h4c1.500 0 1.500 2 0 2h-4M15 16l4-2c1.500-.5 2 1 1 2l-6 4H8l-4-2zM8 8h8v4M8 8V4h8v4" />
  </Icon>
);
export const PeopleIcon = () => (
  <Icon>
    <circle cx="7" cy="9" r="2.500" />
    <circle cx="17" cy="9" r="2.500" />
    <circle cx="12" cy="6.500" r="2.500" />
    <path d="M2.500 18c.3-3 2-4.500 4.500-4.500M21.500 18c-.3-3-2-4.500-4.500-4.500M7.500 19c.3-4.500 2-6.500 4.500-6.500s4.200 2 4.500 6.500" />
  </Icon>
);
export const BellIcon = () => (
  <Icon>
    <path d="M5 17h14c-1.500-1.500-2-3.500-2-6.500a5 5 0 0 0-10 0c0 3-.5 5-2 6.500zM10 20h4M12 5.500V4" />
  </Icon>
);
export const TraceIcon = () => (
  <Icon>
    <path d="M4 6c5 0 6 6 10 6h6M4 18c5 0 6-6 10-6M4 12h16" />
  </Icon>
);
export const MoreIcon = () => (
  <Icon>
    <path d="M4 6h16v12H4zM4 11h16M10.500 14.500h3" />
  </Icon>
);
export const BackIcon = () => (
  <Icon>
    <path d="M14 5 7 12l7 7" />
  </Icon>
);
export const WellMark = () => (
  <Icon>
    <path d="M4 12.500 9.500 18 20 6.500" strokeWidth="2.4" />
  </Icon>
);
export const WatchMark = () => (
  <Icon>
    <circle cx="12" cy="12" r="8.5" strokeWidth="2" />
    <path d="M12 7v5l3 2" strokeWidth="2" />
  </Icon>
);
export const WrongMark = () => (
  <Icon>
    <path d="M12 4 21 20H3zM12 10v5M12 17.500v.2" strokeWidth="2" />
  </Icon>
);

export const Sheaf = () => (
  <svg
    viewBox="0 0 28 28"
    fill="none"
    stroke="currentColor"
    strokeWidth="1.5"
    strokeLinecap="round"
    aria-hidden="true"
  >
    <path d="M14 17V7M12.600 17C12 13 10.500 10 8.500 7.500M15.400 17c.6-4 2.100-7 4.100-9.500M11.400 17C10 14 8 12 5.500 10.800M16.600 17c1.400-3 3.400-5 5.900-6.200" />
    <path d="M13.600 20c-.4 2-1.600 4-3.600 5.500M14.400 20c.4 2 1.600 4 3.600 5.500M14 20v6" />
    <path d="M10.500 17.200h7M10.500 19.700h7" stroke="var(--stripe)" strokeWidth="1.7" />
    <g fill="currentColor" stroke="none">
      <ellipse cx="14" cy="4.5" rx="1.5" ry="2.8" />
      <ellipse cx="7.6" cy="5.4" rx="1.4" ry="2.6" transform="rotate(-30 7.6 5.4)" />
      <ellipse cx="20.4" cy="5.4" rx="1.4" ry="2.6" transform="rotate(30 20.4 5.4)" />
      <ellipse cx="3.7" cy="9.7" rx="1.3" ry="2.5" transform="rotate(-62 3.7 9.7)" />
      <ellipse cx="24.3" cy="9.7" rx="1.3" ry="2.5" transform="rotate(62 24.3 9.7)" />
    </g>
  </svg>
);
