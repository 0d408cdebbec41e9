// Lo que explica la página de los ángulos.
import type { PageWords } from "./description";

const inclinometer =
  "Ponga encima un inclinómetro o un nivel, o mida cuánto cae en una longitud. Si cae hacia el extremo conducido es positivo; si sube, negativo.";
const offset =
  "Visto desde arriba, si va hacia la derecha camino del extremo conducido es positivo: la diferencia hacia un lado sobre la longitud. Déjelo en 0 cuando todo está en un plano.";
const base =
  "A qué distancia están sus dos soportes, o qué largo tiene el asiento de la ballesta. Con eso se calcula la altura del suplemento.";

export const page: PageWords = {
  about:
    "A qué ángulo trabaja cada junta, qué desigualdad queda en el extremo conducido, y qué extremo inclinar y cuánto.",
  purpose: [
    "Una junta en ángulo hace girar su lado de salida más rápido y más lento dos veces por vuelta. Una segunda junta lo quita otra vez, si su ángulo es igual de grande, sus horquillas están bien puestas y las dos están en un plano. Lo que queda se da como la única junta que sería igual de desigual: el ángulo residual.",
    "Mida con el vehículo a la altura a la que trabaja, en piso nivelado: el ángulo en cada extremo y el del cardán mismo.",
  ],
  groups: {
    shaft: "El cardán, visto de lado",
    plan: "Visto desde arriba",
    turn: "Horquillas y carga",
    change: "Qué cambiar",
  },
  hints: {
    joints: "Juntas de cruz entre el extremo conductor y el conducido. Una junta doble cuenta como dos.",
    gearbox: `Caja de cambios o motor. ${inclinometer}`,
    shaft: "A lo largo del tubo, o del primero de dos tubos.",
    rear: "A lo largo del segundo tubo, detrás del soporte central.",
    axle: "El piñón del eje, o lo que sea que se mueve.",
    speed: "La mayor a la que gira. La página de la velocidad la calcula de la del motor o la del camino.",
    read: "Un inclinómetro sobre la pieza lee su inclinación real. Los planos y los desplazamientos dan las dos vistas.",
    gearboxplan: offset,
    shaftplan: offset,
    rearplan: offset,
    axleplan: offset,
    turn: "0 cuando las horquillas de los dos extremos del cardán están alineadas; a derechas es positivo, visto desde el extremo conductor.",
    turn2: "Lo mismo para el segundo cardán.",
    inertia: "Solo si se sabe: el giro desigual la sacude con un par.",
    aim: "0 pide lo menos que puede alcanzar un solo cambio.",
    gearboxbase: base,
    axlebase: base,
    shaftlength: "Del centro de la junta al soporte central: hace falta para subir o bajar el soporte.",
    rearlength: "Del soporte central al centro de la junta.",
  },
  example:
    "Una vagoneta de inspección inventada: una caja de cambios de automóvil mueve un eje de tractor; la caja cae 3°, el cardán 7,5°, el piñón del eje 2°.",
};
