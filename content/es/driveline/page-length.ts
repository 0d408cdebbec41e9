// Lo que explica la página de la longitud.
import type { PageWords } from "./description";

const path =
  "Cuánto se aleja la junta del eje de la caja de cambios al llegar allí; si se acerca es negativo. Depende de los brazos y las ballestas.";

export const page: PageWords = {
  about: "Dónde cortar el tubo, cómo queda el tramo deslizante, y cuánto desliza el cardán cuando el eje se mueve.",
  purpose: [
    "Un cardán demasiado largo empuja su caja de cambios; uno demasiado corto se sale de su deslizante. El tubo se corta de modo que el deslizante quede en su sitio con el vehículo sobre sus ruedas.",
    "Cuando el eje sube y baja, el cardán se acorta y se alarga. El deslizante tiene que tener sitio para eso en los dos sentidos.",
  ],
  groups: {
    shaft: "El cardán como está",
    axle: "El recorrido del eje",
    pto: "Mitades deslizantes de un cardán de toma de fuerza",
  },
  hints: {
    between:
      "Vehículo sobre sus ruedas a su altura de marcha, de cara a cara. De centro a centro de junta si los dos de abajo quedan en 0.",
    drivingface: "De la cara de la brida al medio de su cruz.",
    drivenface: "Lo mismo en el otro extremo.",
    drivingyoke: "A lo largo de la horquilla para soldar, hasta donde topa el tubo.",
    drivenyoke: "A lo largo de la horquilla deslizante y la punta estriada, a fondo, hasta donde topa el tubo.",
    slip: "Desde a fondo hasta el final del estriado; 0 sin deslizante.",
    out: "Cuánto está salido con el vehículo parado.",
    root: "Pregunte a quien lo suelde.",
    run: "Como está, medido a nivel.",
    offset: "Visto desde arriba.",
    stands: "Altura de la junta conductora menos la de la conducida.",
    bump: "Con el eje arriba contra sus topes.",
    droop: "Con el eje colgando.",
    bumpahead: path,
    droopahead: path,
    tube: "Para cardanes de dos tubos que deslizan uno en otro, como en máquinas agrícolas.",
    working: "Donde más trabaja.",
    least: "En lo más largo que llega a estar.",
    left: "En lo más corto que llega a estar.",
  },
  example:
    "Una vagoneta de inspección inventada, entre una caja de cambios de automóvil y un eje de tractor con ballestas.",
};
