// Lo que se dice de la velocidad de un cardán.
import { local } from "../matcher/speech-number";
import type { CalculationWords } from "./description";
import { turning } from "./speech-cautions";

const tube = "Mire si el diámetro y la pared están en la unidad de al lado.";
const ratio = "Las relaciones de marchas están entre 0,2 y 30.";

export const speed: CalculationWords = {
  title: "Velocidad del cardán",
  inputs: {
    outside: { label: "Tubo, diámetro exterior", why: tube },
    wall: { label: "Tubo, grueso de la pared", why: tube },
    material: { label: "Material", options: { steel: "acero", aluminium: "aluminio" } },
    length: { label: "Longitud entre centros de juntas", why: "Un cardán tiene de 50 mm a 12 m de longitud." },
    from: {
      label: "La velocidad se sabe por",
      options: {
        given: "el cardán mismo",
        engine: "velocidad del motor y marchas",
        road: "velocidad en el camino, rueda y eje",
      },
    },
    speed: { label: "Velocidad del cardán", why: "Por encima de 20 000 rev/min no gira ningún cardán así." },
    engine: { label: "Velocidad del motor", why: "Por encima de 20 000 rev/min no gira ningún motor así." },
    gear: { label: "Relación de la marcha más alta", why: ratio },
    transfer: { label: "Relación de la caja de transferencia", why: ratio },
    road: { label: "Velocidad en el camino", why: "Por encima de 500 km/h esto no es ningún camino." },
    tyre: { label: "Radio de rodadura de la rueda", why: "Un radio, no un diámetro." },
    axle: { label: "Relación del eje", why: ratio },
  },
  parts: {
    running: "Velocidad a la que gira",
    critical: "Velocidad crítica",
    working: "Velocidad de trabajo al lado de ella",
    longest: "El cardán más largo de este tubo a esta velocidad",
    tube: "Menor diámetro exterior para esta longitud y velocidad",
  },
  cautions: turning,
  unchecked: [
    "El peso de las horquillas, lo que ceden juntas, soportes y apoyos, golpes y soldaduras: cada cosa baja la velocidad crítica real.",
    "Si el cardán está derecho y equilibrado, y si sus juntas y estriados admiten la velocidad.",
    "El exceso de velocidad cuesta abajo o con las ruedas en el aire.",
  ],
  grounds: {
    "a guide of SAE as recalled": "una guía de SAE, de memoria",
    "steel; with this density 0.3 % below the constant IMS prints":
      "acero; con esta densidad, 0,3 % por debajo de la constante que imprime IMS",
    "industrial shafts": "cardanes industriales",
    "vehicle shafts": "cardanes de vehículos",
    "the same with the slip outside the joints": "lo mismo con el deslizante por fuera de las juntas",
    "the same with the slip between the joints": "lo mismo con el deslizante entre las juntas",
    "1.21e8, mm and rev/min": "1,21e8, mm y rev/min",
    "4.8e6, in and rev/min": "4,8e6, in y rev/min",
    "4.705e6, in and rev/min": "4,705e6, in y rev/min",
    "4.764e6, in and rev/min": "4,764e6, in y rev/min",
    "4.75e6, in and rev/min": "4,75e6, in y rev/min",
    "from 10e6 psi and 0.098 lb/in³": "de 10e6 psi y 0,098 lb/in³",
    "First bending mode of an even, slender tube on rigid hinges. Weight of yokes, give of joints and hangers and shear are left out, so the real one is lower: about 2 % by shear alone at 14 diameters long.":
      "Primer modo de flexión de un tubo parejo y esbelto sobre articulaciones rígidas. El peso de las horquillas, lo que ceden juntas y soportes y el corte quedan fuera, así que la real es menor: cerca de 2 % solo por el corte con 14 diámetros de longitud.",
    "A joint shakes its shaft twice a turn, so steady running near half the critical speed is to be avoided.":
      "Una junta sacude su cardán dos veces por vuelta, así que hay que evitar marchar de continuo cerca de la mitad de la velocidad crítica.",
    "From the critical speed turned round.": "De la velocidad crítica, despejando.",
    "The tube alone.": "El tubo solo.",
    "w = w_engine / (gear x transfer)": "w = w_motor / (marcha x transferencia)",
    "No slip of clutch or converter.": "Sin resbalamiento de embrague o convertidor.",
    "w = v axle / r; v[km/h] = 0.06 n U / (i_G i_V i_A)": "w = v eje / r; v[km/h] = 0,06 n U / (i_G i_V i_A)",
    "r is the radius the tyre rolls on under load, U = 2 pi r; a tyre grows at speed and shrinks as it wears.":
      "r es el radio con que rueda la rueda con carga, U = 2 pi r; un neumático crece con la velocidad y encoge con el desgaste.",
    steel: "acero",
    aluminium: "aluminio",
  },
};

const share = (fraction: number, says: string): string =>
  `${local(fraction.toFixed(3).replace(/0+$/, ""))} de la crítica, ${says}`;

export const say = {
  speed: "Velocidad del cardán",
  road: "Velocidad en el camino a esa velocidad del motor",
  critical: "Primera velocidad crítica de flexión",
  half: "La mitad de ella",
  mass: "Peso del tubo solo",
  constant: (says: string): string => `Lo mismo con la constante ${says}`,
  fraction: "Velocidad de trabajo como parte de la crítica",
  share,
  nearHalf:
    "La velocidad de trabajo queda a menos de una décima de la mitad de la crítica, donde los dos golpes de una junta en cada vuelta sacuden el cardán: evite marchar ahí de continuo.",
  longest: "El más largo, a la propia velocidad crítica",
  longestAt: (fraction: number, says: string): string => `El más largo a ${share(fraction, says)}`,
  tube: "Menor diámetro, a la propia velocidad crítica",
  tubeAt: (fraction: number, says: string): string => `Menor diámetro a ${share(fraction, says)}`,
  plot: {
    title:
      "Velocidad crítica según la longitud, y la mitad de ella en línea cortada; el anillo es este cardán a su velocidad de trabajo",
    x: (unit: string): string => `Longitud, ${unit}`,
    y: "Velocidad, rev/min",
    here: "este cardán",
  },
};
