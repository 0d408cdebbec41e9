// Lo que son las constantes del método, en oraciones, para la página del método. Sus ids, fundamentos y fuentes están en
// method-*.ts.
import type * as measuringGiven from "./given-measuring";
import type * as partsGiven from "./given-parts";
import type * as slipsGiven from "./given-slips";
import type * as weighingGiven from "./given-weighing";
import type * as yokesGiven from "./given-yokes";

export const measuring: Record<keyof typeof measuringGiven, string> = {
  caliperLimit100: "Un calibrador que lee hasta 0,01 o 0,02 mm puede fallar en esto hasta 100 mm.",
  caliperLimit300: "El mismo calibrador, de 100 a 300 mm.",
  coarseVernierLimit: "Un calibrador con nonio que lee hasta 0,05 mm.",
  grooveReading: "Se añade a una lectura entre caras de ranura: cuenta como lectura de interior o de profundidad.",
  micrometerLimit50: "Un micrómetro hasta 50 mm.",
  micrometerLimit75: "Un micrómetro de 50 a 75 mm.",
  micrometerLimitAbove: "Un micrómetro por encima de 75 mm, tomado más ancho que la tendencia publicada.",
  ruleLimit: "Una regla de acero hasta 500 mm.",
  tapeLimit: "Una cinta métrica de clase III hasta 1 m; la clase no se pregunta, así que se toma la más ancha.",
  digitalStep: "Paso de un calibrador digital.",
  dialStep: "Paso de un calibrador de carátula o de nonio fino.",
  coarseVernierStep: "Paso de un calibrador de nonio grueso.",
  micrometerStep: "Paso de un micrómetro corriente.",
  ruleStep: "Raya más fina de una regla de acero; 1/64 in son 0,4 mm.",
  tapeStep: "Raya más fina de una cinta métrica.",
  coarseStep: "Si la última cifra vale esto o más, se pide escribirla más fina.",
  coarsestFraction:
    "Una fracción con un denominador hasta este se toma como leída a 1/32 in; la gente deja fuera las mitades.",
  capRepeat: "Repetición de un diámetro de dado con un calibrador.",
  acrossRepeat: "Repetición de un largo: cada vez hay que empujar los dados a fondo y escuadrar las bocas.",
  ruleRepeat: "Alinear una regla de acero a ojo en dos bordes.",
  tapeRepeat: "Alinear una cinta métrica a ojo en dos bordes.",
  repeatDof: "Cuántos grados de libertad valen los cuatro números de arriba al juntarlos con las lecturas (4.2.4).",
  newEither:
    "Una pieza nueva puede dar esto de menos o de más: no más que el juego que un fabricante admite después de montar, de 0 a 0,02 mm.",
  usedCapSmall:
    "Un dado usado puede dar esto de menos por desgaste, según el juego que otro fabricante todavía admite, hasta 0,05 mm.",
  usedCapLarge: "Un dado usado puede dar esto de más por suciedad y rebabas.",
  usedAcrossNarrow:
    "Una cruceta usada puede dar esto de menos por desgaste; menos que su juego, que se quita al empujar los dados a fondo.",
  usedAcrossWide: "Una cruceta usada puede dar esto de más: un dado que no llega a fondo, o suciedad.",
  wornCapSmall:
    "Un dado gastado puede dar esto de menos, según el juego con el que un fabricante dice que se cambie, 0,006 in.",
  wornCapLarge: "Un dado gastado puede dar esto de más por suciedad y rebabas.",
  wornAcrossNarrow: "Una cruceta gastada puede dar esto de menos, según las mismas 0,006 in.",
  wornAcrossWide: "Una cruceta gastada puede dar esto de más: un dado que no llega a fondo, o suciedad.",
  rustedSmall: "Una pieza oxidada puede dar esto de menos: el óxido que se cayó deja un hoyo.",
  rustedLarge: "Una pieza oxidada puede dar esto de más: el óxido sobresale.",
  playAllowed: "Juego a lo largo de una cruceta montada que un fabricante todavía admite.",
  playRenew:
    "Juego en los extremos de una cruceta por encima del cual otro fabricante dice que se cambie, 0,006 in redondeadas hacia abajo.",
  spreadLevel:
    "Las lecturas de una misma cosa quedan más juntas que la dispersión a este nivel; de las que se apartan más se dice que se dispersan.",
  outlierMads: "Una lectura que se aparta tantas desviaciones medianas escaladas se mira aparte.",
  madScale: "Hace comparable una desviación mediana con una desviación típica (1 / 0,6745, el cuartil normal).",
  capFloor: "Ninguna lectura de dado más cerca del centro que esto se aparta.",
  acrossFloor: "Ninguna lectura de largo más cerca del centro que esto se aparta.",
  floorLimits:
    "Tampoco una que esté a menos de tantas incertidumbres típicas de lo que ninguna repetición descubre: instrumento, paso y estado.",
  apartFloors:
    "Dos lecturas, o dos grupos de ellas, separadas tantas veces la mayor de esas distancias no se promedian.",
  spreadFloors: "Tampoco más lecturas que se dispersen en más de tantas veces esa distancia.",
  capOther: "Una lectura de dado que se aparta tanto puede ser un segundo diámetro de dado, no suciedad.",
  acrossOther: "Un largo que se aparta tanto puede ser el otro par de dados, no un dado que no llega a fondo.",
  birgeLevel:
    "Las mediciones cuya dispersión el azar supera más raramente que esto no concuerdan entre sí (Cox, Metrologia 39, 589, procedimiento A).",
  leastCap: "Ningún dado de transmisión es más delgado.",
  greatestCap: "Ningún dado de transmisión es más grueso.",
  leastAcross: "Ninguna cruceta de transmisión es más corta.",
  greatestAcross: "Ninguna cruceta de transmisión es más larga.",
};

export const weighing: Record<keyof typeof weighingGiven, string> = {
  commonPractice: "Un valor de uso común, por lo menos así de ancho.",
  memoryCap: "Un diámetro de dado sabido de memoria, por lo menos así de ancho.",
  memoryAcross: "Un largo sabido de memoria, por lo menos así de ancho: 1/64 in.",
  madeCap:
    "En cuánto difieren los dados de una misma medida: suelen hacerse con h6, de 13 a 19 micrómetros de ancho entre 18 y 80 mm.",
  madeAcross:
    "En cuánto difieren en el largo las crucetas de una misma medida: la mitad de lo que abarcan los anillos de ajuste de un fabricante, de 1,22 a 1,38 mm.",
  agreeLevel:
    "Una fila concuerda cuando la diferencia queda dentro de este intervalo de dos lados: el de los límites del valor impreso y la incertidumbre de las lecturas, juntos.",
  rivalReach: "Una fila que falla en menos de tantos intervalos todavía cuenta en contra.",
  tailDof: "Máximo de grados de libertad de la verosimilitud de colas pesadas.",
  priorCommon: "Peso de una fila de uso común al lado de una publicada.",
  priorMemory: "Peso de una fila de memoria al lado de una publicada.",
  priorOpen: "Peso de una fila por cada cosa, sujeción o caras, que el cuadro no sabe.",
  priorOther: "Peso de concordar con otro valor que se da para una medida al lado de concordar con el principal.",
  wholeDigits: "De un valor del cuadro cuya media última cifra vale esto o más se dice que es grueso.",
  priorAbsent: "Probabilidad, antes de medir, de que una cruceta no esté en el cuadro.",
  sharedCap:
    "Parte de las medidas desconocidas que tienen un dado del cuadro: los fabricantes tienen pocos dados y muchos largos.",
  spreadCap: "Cuánto se reparten las medidas desconocidas alrededor de los dados conocidos.",
  spreadAcross: "Cuánto se reparten las medidas desconocidas alrededor de los largos conocidos.",
  otherLeftAt:
    "Una medida que concuerda solo con otro valor que se da para ella tiene que ser así de probable para quedar al lado de una que concuerda sin más, salvo que las lecturas sean gruesas.",
  claimAt:
    "Una medida tiene que ser así de probable para nombrarla sin más. Una que falla por un pelo queda mientras sea bastante probable como para estorbarlo.",
  coarseCap:
    "Un dado que no se conoce mejor que esto no nombra ninguna medida sin más: no distinguiría una cruceta con 0,3 mm de diferencia. El banco de verdad mide cuánto vale eso.",
  coarseAcross:
    "Un largo que no se conoce mejor que esto no nombra ninguna medida sin más: no distinguiría una cruceta con 0,6 mm de diferencia.",
};

export const slips: Record<keyof typeof slipsGiven, string> = {
  slipUnits: "Probabilidad de que las lecturas se escribieran en la otra unidad.",
  slipExchanged: "Probabilidad de que dado y largo se escribieran uno en el lugar del otro.",
  slipPoint: "Probabilidad de que la coma decimal se pusiera en un cierto lugar equivocado.",
  slipDigits: "Probabilidad de que se cambiaran de lugar dos cifras vecinas de una medida.",
  slipFraction: "Probabilidad de que se errara una raya de una escala en pulgadas, por 1/16 o 1/32 in.",
  slipOuterFaces:
    "Probabilidad de que una cruceta de anillos interiores se midiera entre las caras exteriores de las ranuras, o con los anillos puestos: las dos cosas son costumbre del oficio.",
  slipOverClips: "Probabilidad de que una cruceta de anillos exteriores se midiera sobre los anillos.",
  slipOverCaps: "Probabilidad de que una cruceta de anillos interiores se midiera sobre los dados.",
  slipOverPlates: "Probabilidad de que una cruceta de placas se midiera sobre ellas.",
  slipOverEars: "Probabilidad de que se midieran las orejas de la horquilla y no la cruceta.",
  slipCentre: "Probabilidad de que el largo se tomara solo hasta el centro de la cruz.",
  slipRadius: "Probabilidad de que el radio de un dado se tomara por su diámetro.",
  slipHold: "Probabilidad de que se eligiera otra sujeción que la de la cruceta.",
  slipOfPart: "Parte de esas probabilidades que toca a una sola medida o a un solo extremo.",
  clipsLeast:
    "Lo menos que anillos o caras exteriores de ranura alargan una lectura: uno de los anillos más delgados que imprimen los fabricantes, 1,22 mm, redondeado hacia abajo.",
  clipsMost:
    "Lo más que anillos o caras exteriores de ranura alargan una lectura: dos de 2,12 mm, los más gruesos de este fabricante, redondeado hacia abajo; otro fabricante los tiene más gruesos.",
  capsLeast: "Lo menos que una cruceta de anillos interiores es más larga sobre los dados que entre las ranuras.",
  capsMost: "Lo más que una cruceta de anillos interiores es más larga sobre los dados que entre las ranuras.",
  platesLeast: "Lo menos que una cruceta es más larga sobre las placas que debajo de ellas.",
  platesMost: "Lo más que una cruceta es más larga sobre las placas que debajo de ellas.",
  earsLeast:
    "Lo menos que las orejas de la horquilla son más anchas que la cruceta que llevan; las de un dueño eran 0,8 mm más anchas.",
  earsMost:
    "Lo más que las orejas de la horquilla son más anchas que la cruceta que llevan; las de un dueño eran 0,8 mm más anchas.",
  centreSpread: "Con qué acierto se halla el centro de una cruz, a un lado o al otro.",
  slipReach: "Un descuido explica lecturas que quedan a menos de tantas incertidumbres típicas de una medida.",
  slipAt: "Un descuido tiene que ser así de probable para que se hable de él.",
  slipStrongAt: "Un descuido así de probable es el resultado: medir otra vez.",
};

export const yokes: Record<keyof typeof yokesGiven, string> = {
  leastClip: "Ningún anillo de una cruceta de transmisión es más delgado.",
  greatestClip: "Ningún anillo de una cruceta de transmisión es más grueso.",
  thinnestClip:
    "El anillo más delgado de las series que publican los fabricantes. De un anillo que no se midió se toma que es por lo menos así de grueso.",
  thickestClip:
    "El anillo más grueso de esas series. De un anillo que no se midió se toma que es a lo más así de grueso.",
  newBoreLarger:
    "Un alojamiento nuevo es a lo más así de mayor que su dado: H7 sobre h6 de 30 a 50 mm. Los límites están publicados; que los fabricantes usen ese ajuste, no.",
  usedBoreLarger: "Un alojamiento usado: según el juego que un fabricante todavía admite después de montar.",
  wornBoreLarger:
    "Un alojamiento gastado: un poco por encima del juego con el que un fabricante dice que se cambie, 0,006 in.",
  boreSmaller:
    "Un alojamiento puede dar esto menos que su dado: bocas fuera del medio de un agujero, o una oreja un poco cerrada.",
  rustedBoreSmaller:
    "Un alojamiento oxidado da todavía menos, y el óxido en las caras cambia otro tanto la distancia entre las orejas.",
  tightBore:
    "De un dado se dice que no entra en un alojamiento que es menor en más de esto. El dado de 27,00 mm de un dueño iba en alojamientos de 26,92 y 26,80 mm, y no quería entrar en el segundo.",
  newPlay: "Una cruceta recién montada tiene a lo más este juego entre sus anillos.",
  wornPlay: "Una cruceta gastada tiene a lo más el doble del juego con el que un fabricante dice que se cambie.",
  mostWays: "Por cada extremo cuya horquilla se queda se dicen a lo más tantas maneras de unirlo con el otro.",
};

export const parts: Record<keyof typeof partsGiven, string> = {
  madePart: "Estriados, bridas y otras piezas: en cuánto puede apartarse una pieza de su valor, a un lado o al otro.",
  coarsePart:
    "Estriados, bridas y otras piezas: donde lectura y valor juntos no se conocen mejor que esto, no se nombra ninguna fila sin más.",
  wornPart:
    "Estriados, bridas y otras piezas: una lectura que da de menos hasta esto se señala como posible desgaste. Aun así no concuerda con nada.",
};
