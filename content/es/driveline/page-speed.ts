// Lo que explica la página de la velocidad.
import type { PageWords } from "./description";

export const page: PageWords = {
  about: "A qué velocidad empieza a arquearse un tubo, a cuál gira de verdad, y qué longitud puede tener.",
  purpose: [
    "Un tubo que gira bastante rápido se arquea como una cuerda de saltar: es su primera velocidad crítica de flexión. Baja con el cuadrado de la longitud, así que un cardán largo es un cardán lento; la pared casi no importa.",
    "Cuánto de esa velocidad se puede usar es cosa de reglas que difieren. Todas las que se conocen aquí están una al lado de otra.",
  ],
  groups: { shaft: "El cardán", running: "A qué velocidad gira" },
  hints: {
    outside: "De lado a lado del tubo, lejos de soldaduras y contrapesos.",
    wall: "La del tubo, como se compra; una barra maciza tiene la mitad de su diámetro.",
    material: "El acero y el aluminio salen casi iguales.",
    length: "De centro a centro de junta, o de una junta al medio del soporte central.",
    from: "Tome la mayor velocidad que puede alcanzar, también cuesta abajo y en la marcha más alta.",
    speed: "La mayor.",
    engine: "La mayor que alcanza, no donde da su mayor potencia.",
    gear: "Motor entre salida de la caja: 1 en directa, menos en sobremarcha.",
    transfer: "En alta; 1 si no la tiene.",
    road: "La mayor, también cuesta abajo.",
    tyre: "Del piso al centro de la rueda, con carga. Con una velocidad del motor dice además la velocidad en el camino.",
    axle: "Vueltas del cardán por una de la rueda.",
  },
  example:
    "Una vagoneta de inspección inventada: un tubo de 3 in entre una caja de cambios de automóvil en su sobremarcha y un eje de tractor.",
};
