// Lo que se dice de la vida de las agujas de una cruceta.
import { list } from "../matcher/speech-words";
import type { CalculationWords } from "./description";
import { turning } from "./speech-cautions";

const unit = "Mire si la unidad de al lado es en la que se leyó.";

export const life: CalculationWords = {
  title: "Vida de las agujas de la cruceta",
  inputs: {
    torque: { label: "Par que lleva", why: unit },
    angle: {
      label: "Ángulo de la junta",
      why: "Sin ángulo las agujas no ruedan, y la fórmula no tiene respuesta.",
    },
    speed: { label: "Velocidad", why: "Por encima de 20 000 rev/min no gira ningún cardán así." },
    shock: { label: "Factor de golpes", why: "1 es sin golpes; más de 10 es un martillo." },
    rating: { label: "Capacidad nominal: par para 5000 h a 3° y 100 rev/min", why: unit },
    capacity: { label: "Capacidad: de los rodamientos, por su brazo", why: unit },
    life: { label: "Vida que se quiere", why: "Entre una hora y un millón." },
  },
  parts: {
    rated: "Por una capacidad nominal a 5000 h, 3° y 100 rev/min",
    capacity: "Por la capacidad de los rodamientos",
    wanted: "Qué capacidad ha de tener una cruceta",
  },
  cautions: turning,
  unchecked: [
    "Grasa, suciedad, agua y retenes, que acaban con la mayoría de las crucetas antes de que se cansen las agujas.",
    "Las horquillas, los estriados, y si la cruceta aguanta el par siquiera.",
    "Par, ángulo y velocidad que cambian: los números son para un solo estado constante.",
  ],
  grounds: {
    "5000 h at 3 degrees and 100 rev/min with the rated torque": "5000 h a 3 grados y 100 rev/min con el par nominal",
    "smaller angles count as 3 degrees": "los ángulos menores cuentan como 3 grados",
    "bearing capacity times arm, 90 % survive": "capacidad de los rodamientos por el brazo, 90 % sobrevive",
    "of torque": "del par",
    "of torque, about": "del par, aproximadamente",
    "mean life over B10, about": "vida media entre B10, aproximadamente",
    "electric motor": "motor eléctrico",
    "petrol engine, four cylinders or more": "motor de gasolina, cuatro cilindros o más",
    "diesel engine, four cylinders or more": "motor diésel, cuatro cilindros o más",
    "L = 1.5e6 / (A N) x (Tc / (K T))^(10/3) hours, A in degrees, N in rev/min":
      "L = 1,5e6 / (A N) x (Tc / (K T))^(10/3) horas, A en grados, N en rev/min",
    "Tc is the torque that gives 5000 h at 3 degrees and 100 rev/min, and nothing else. Needles well greased and clean, steady load; a wear-out of the bearings only. Not yokes, splines or seals.":
      "Tc es el par que da 5000 h a 3 grados y 100 rev/min, y nada más. Agujas bien engrasadas y limpias, carga constante; solo el desgaste de los rodamientos. No las horquillas, los estriados ni los retenes.",
    "L = 1.5e7 / (n b) x (CR / (K M))^(10/3) hours, b in degrees, n in rev/min":
      "L = 1,5e7 / (n b) x (CR / (K M))^(10/3) horas, b en grados, n en rev/min",
    "CR is a bearing capacity times its arm. The form is from memory: confirm with the maker of the joint. Needles well greased and clean, steady load; a wear-out of the bearings only. Not yokes, splines or seals.":
      "CR es una capacidad de rodamiento por su brazo. La fórmula es de memoria: confírmela con el fabricante de la cruceta. Agujas bien engrasadas y limpias, carga constante; solo el desgaste de los rodamientos. No las horquillas, los estriados ni los retenes.",
  },
};

export const say = {
  life: "Vida que alcanzan nueve crucetas de cada diez (B10)",
  mean: "Vida media, aproximadamente",
  cubic: "Vida con la tercera potencia del par",
  halfAngle: "La mitad del ángulo: vida por",
  halfTorque: "La mitad del par: vida por",
  halfSpeed: "La mitad de la velocidad: vida por",
  counts: (angle: string): string => `En esta fórmula los ángulos menores que ${angle} cuentan como ${angle}.`,
  ratedBasis: "En esta fórmula solo puede ir una capacidad nominal dada para 5000 h a 3° y 100 rev/min.",
  shocks: (list_: readonly string[]): string => `Factores de golpes publicados: ${list(list_)}.`,
  capacityBasis:
    "Esta fórmula es de memoria, no publicada: confírmela con el fabricante de la cruceta antes de guiarse por ella.",
  ratingFor: "Capacidad nominal que ha de tener (5000 h, 3°, 100 rev/min)",
  capacityFor: "Capacidad que ha de tener, en la otra fórmula",
  notComparable:
    "Los dos números significan cosas distintas: nunca compare la capacidad nominal de un fabricante con el número de la otra fórmula.",
};
