// Las precauciones que lleva cada cálculo: qué atender antes de trabajar en un cardán, y qué palabra va primero.

const defer =
  "El manual del fabricante, las normas locales y un taller de cardanes competente van antes que cualquier cosa de esta página. Ella da números y con qué se compararon; no dice que un cardán sirva para usarse.";
const stands =
  "Vehículo en suelo nivelado, ruedas calzadas, sobre caballetes con carga nominal, caja de cambios en punto muerto. Sostenga el cardán antes de soltar tornillos: puede pasar de 100 lb (46 kg).";
const phase =
  "Marque la fase antes de desarmar: montarlo fuera de fase es un peligro. Ni calor, ni mazo, ni gato de piso en una cruceta.";
const guarded =
  "Los cardanes expuestos llevan siempre su protección: toma de fuerza (OSHA 29 CFR 1928.57, ISO 5674), autobuses (49 CFR 393.89). Nadie cerca de un cardán que gira.";
const shop =
  "Un tubo doblado o cortado se desecha. Equilibrar y soldar es trabajo de un taller de cardanes. Las abrazaderas y los tornillos con freno se usan una sola vez.";
const press =
  "Protección para los ojos al prensar o golpear dados y al poner anillos. Nunca se ponga en línea con la prensa.";

/** Para todo lo de un cardán que gira. */
export const turning: string[] = [defer, stands, phase, guarded, shop];

/** Para todo lo de dados, anillos y tornillos. */
export const fitting: string[] = [defer, press, stands, phase, shop];
