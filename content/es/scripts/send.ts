// What the send page says by itself; labels are in templates/send.html. The card has words of its own, but for those
// of the way a link leaves the page.
import type { Quantity } from "../../matcher/types";

export const quantityWords: Record<Quantity, string> = { cap: "diámetro del dado", across: "largo" };

export const words = {
  nothing: "Marque al menos una cosa que medir y aquí estará el enlace.",
  tooLong: (length: number, most: number) =>
    `El enlace tiene ${length} caracteres; algunos programas de mensajes cortan los de más de ${most}. Acorte la pregunta.`,
  subject: (from: string) => (from ? `Por favor, mida una cruceta para ${from}` : "Por favor, mida una cruceta"),
  message: (question: string) => `${question ? `${question}\n\n` : ""}Este enlace lo guía paso a paso:\n`,
  qr: "El enlace como código QR",
} as const;

export const deliverWords = {
  copied: "Copiado. Péguelo en un mensaje.",
  copyByHand: "Aquí no se permite copiar. El enlace está seleccionado: cópielo usted.",
  shared: "Entregado.",
} as const;
