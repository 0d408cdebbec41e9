// Lo que explica la página del par.
import type { PageWords } from "./description";

export const page: PageWords = {
  about: "Lo que manda el motor y lo que aguantan las ruedas, y qué hace eso con el tubo, la junta y los rodamientos.",
  purpose: [
    "Un cardán lleva el menor de dos pares: lo que llega en la marcha más baja, y lo que sale antes de que patinen las ruedas. Por cuál de ellos guiarse depende del uso; se dan los dos.",
    "El tubo se compara con el comienzo de la fluencia; la cruceta, con una capacidad donde usted tiene una. Este cuadro tiene medidas, no capacidades.",
  ],
  groups: {
    carry: "Lo que se lleva",
    engine: "Motor y marchas",
    wheels: "Eje y ruedas",
    shaft: "El tubo",
    joint: "La junta",
  },
  hints: {
    by: "Con qué siguen las partes del tubo y de la junta.",
    torque: "Como se midió o como lo da su fabricante.",
    row: "Como 1310: se busca en el cuadro si hay una capacidad publicada.",
    rating: "Del catálogo del fabricante, para este uso y ángulo.",
    engine: "De su hoja de datos.",
    rated: "Las hojas de datos dicen cuál; bruto es sin ventilador ni alternador.",
    gearbox: "Las dos fuentes toman pérdidas distintas para ellas.",
    gear: "Motor entre salida de la caja.",
    stall: "De los datos del convertidor; 1 si no lo tiene.",
    transfer: "Déjelo fuera si no hay caja de transferencia.",
    load: "Lo que pesa sobre ese eje, como lo muestra una báscula, con lo que pasa a él al arrancar.",
    tyre: "Del piso al centro de la rueda, con carga.",
    axle: "Vueltas del cardán por una de la rueda.",
    friction: "La fórmula impresa toma 0,71; una rueda de acero sobre un riel tiene mucho menos.",
    efficiency: "La fórmula impresa toma 0,95.",
    outside: "De lado a lado del tubo.",
    wall: "La del tubo, como se compra.",
    yield: "Límite elástico a tracción.",
    shear: "Solo para el giro.",
    length: "Solo para el giro.",
    angle: "Como trabaja; la página de los ángulos lo calcula.",
    radius: "La mitad de la distancia entre los medios de las agujas de dos dados opuestos.",
    spline: "La mitad del diámetro primitivo, para el empuje que hace un deslizante con carga.",
    machine: "Las juntas pequeñas de máquinas, con agujero, tienen un factor para su ángulo.",
  },
  example:
    "Una vagoneta de inspección inventada: 150 N·m de un motor de automóvil, 1200 kg sobre un eje de tractor con neumáticos de camino, un tubo de 3 in. El límite elástico no es real.",
};
