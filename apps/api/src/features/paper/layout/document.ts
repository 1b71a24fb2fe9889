import type PDFDocument from 'pdfkit';

export type Document = InstanceType<typeof PDFDocument>;
