// Lo que dicen de sí mismos las constantes, las fórmulas, los límites y los documentos de los cálculos, por el texto inglés
// que está al lado de sus números en given-*.ts y sources.ts. Ningún número está aquí por segunda vez para calcular con él.

const words: Record<string, string> = {
  "each joint of a shaft": "cada junta de un cardán",
  "last shaft of a set of several": "último cardán de un grupo de varios",
  "each joint": "cada junta",
  "smooth running": "marcha suave",
  "early wear above": "por encima, desgaste temprano",
  "power take-off with a flange": "toma de fuerza con brida",
  "shaft with a single joint": "cardán con una sola junta",
  "each shaft of a set but the last": "cada cardán de un grupo menos el último",
  "odd joint of a two-piece shaft": "junta impar de un cardán de dos tramos",
  "motor homes, and shafts ahead of a transfer case or auxiliary gearbox":
    "casas rodantes, y cardanes delante de una caja de transferencia o auxiliar",
  "two joints of a shaft": "las dos juntas de un cardán",
  "high torque or speed, 1 to 1.5 degrees: the stricter": "par o velocidad altos, 1 a 1,5 grados: lo más estricto",
  "high torque or speed, 1 to 1.5 degrees: the wider": "par o velocidad altos, 1 a 1,5 grados: lo más amplio",
  "low speed, 3 to 5 degrees tolerated: the stricter": "velocidad baja, se toleran 3 a 5 grados: lo más estricto",
  "low speed, 3 to 5 degrees tolerated: the wider": "velocidad baja, se toleran 3 a 5 grados: lo más amplio",
  "phase of the yokes": "fase de las horquillas",
  "yokes parallel": "horquillas paralelas",
  "that of a joint at 3 degrees": "la de una junta a 3 grados",
  "a guide of SAE as recalled": "una guía de SAE, de memoria",
  "about; implied by its table of angles": "aproximado; se deduce de su tabla de ángulos",
  "the same guide, sometimes": "la misma guía, a veces",
  "inertia of the shaft, driving": "inercia del cardán, tirando",
  "inertia of the shaft, coasting": "inercia del cardán, reteniendo",
  "Driving side turns steadily; rigid shafts, no play; rotation counted from the driving yoke in the plane of the shafts.":
    "El lado conductor gira constante; árboles rígidos, sin juego; el giro se cuenta desde la horquilla conductora en el plano de los árboles.",
  "w2/w1 = cos b / (1 - sin^2 b cos^2 t); from cos b to 1/cos b":
    "w2/w1 = cos b / (1 - sen^2 b cos^2 t); de cos b a 1/cos b",
  "U = 1/cos b - cos b = tan b sin b": "U = 1/cos b - cos b = tan b sen b",
  "a2 = -w1^2 cos b sin 2t sin^2 b / (1 - sin^2 b cos^2 t)^2; greatest where s^2 x^2 + (2 - s^2) x = 2 s^2, x = cos 2t, s = sin b":
    "a2 = -w1^2 cos b sen 2t sen^2 b / (1 - sen^2 b cos^2 t)^2; máxima donde s^2 x^2 + (2 - s^2) x = 2 s^2, x = cos 2t, s = sen b",
  "Small angles: 0.5 % low at 10 degrees, 2.5 % at 20.": "Ángulos pequeños: da 0,5 % de menos a 10 grados, 2,5 % a 20.",
  "angle between the unit vectors of the two shafts": "ángulo entre los vectores unitarios de los dos árboles",
  "Exact for any two directions, as far as their inclinations were read.":
    "Exacta para dos direcciones cualesquiera, en lo que se leyeron bien sus inclinaciones.",
  "cos r = s2/s1 of the product of joint and phase matrices; coplanar: cos b1 / cos b2 x cos b3 ..., inverted if above 1":
    "cos r = s2/s1 del producto de las matrices de juntas y fases; en un plano: cos b1 / cos b2 x cos b3 ..., invertido si pasa de 1",
  "Exact for rigid shafts without play, in one plane or not. Masses do not bend or twist anything.":
    "Exacta para árboles rígidos sin juego, en un plano o no. Las masas no doblan ni tuercen nada.",
  "r = sqrt(|+-b1^2 +-b2^2 +-b3^2|), each turned by twice the angle of plane and yokes":
    "r = sqrt(|+-b1^2 +-b2^2 +-b3^2|), cada uno girado en el doble del ángulo de plano y horquillas",
  "Small angles: 0.1 % at 5 degrees, 0.3 % at 10. Poor where nearly nothing is left.":
    "Ángulos pequeños: 0,1 % a 5 grados, 0,3 % a 10. Mala donde casi no queda nada.",
  "drive shafts": "cardanes",
  "list of ISO 21940-11": "lista de ISO 21940-11",
  "limit of a check in the field, one maker": "límite de una comprobación en el terreno, un fabricante",
  "drive shafts with special demands": "cardanes con exigencias especiales",
  "below this speed balancing is normally not needed":
    "por debajo de esta velocidad normalmente no hace falta equilibrar",
  "U = G M / w; in g mm: 9549 G M / n with G in mm/s, M in kg, n in rev/min":
    "U = G M / w; en g mm: 9549 G M / n con G en mm/s, M en kg, n en rev/min",
  "A rotor that stays rigid: well below its bending critical speed. Of the whole shaft; half in each of two planes when both ends are alike.":
    "Un rotor que se mantiene rígido: muy por debajo de su velocidad crítica de flexión. Del cardán entero; la mitad en cada uno de dos planos cuando los dos extremos son iguales.",
  "rounded down to whole degrees": "redondeado hacia abajo a grados enteros",
  "power take-off shafts; its basis is printed as 100 rad/s² and fits 1000; flat at 11° 30' up to 1500 rev/min":
    "cardanes de toma de fuerza; su base está impresa como 100 rad/s² y concuerda con 1000; constante en 11° 30' hasta 1500 rev/min",
  "an older chart as recalled; confirm before use": "un cuadro más antiguo, de memoria; confírmelo antes de usarlo",
  "solid-bar shaft, from time to time": "cardán de barra maciza, de vez en cuando",
  "solid-bar shaft, little torque": "cardán de barra maciza, poco par",
  "a shaft of 18 to 57 in: stay below": "un cardán de 18 a 57 in: quédese por debajo",
  "ends parallel: length in inches over 5": "extremos paralelos: longitud en pulgadas entre 5",
  "ends meeting: length in inches over 10": "extremos que se cruzan: longitud en pulgadas entre 10",
  "steel; with this density 0.3 % below the constant IMS prints":
    "acero; con esta densidad, 0,3 % por debajo de la constante que imprime IMS",
  steel: "acero",
  aluminium: "aluminio",
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
  "SAE J429 grade 5, up to 1 in": "SAE J429 grado 5, hasta 1 in",
  "SAE J429 grade 8": "SAE J429 grado 8",
  "ISO 898-1 class 8.8 up to 16 mm": "ISO 898-1 clase 8.8 hasta 16 mm",
  "ISO 898-1 class 10.9": "ISO 898-1 clase 10.9",
  "ISO 898-1 class 12.9": "ISO 898-1 clase 12.9",
  "where class 8.8 changes": "donde cambia la clase 8.8",
  "ISO 898-1 class 8.8 above 16 mm": "ISO 898-1 clase 8.8 por encima de 16 mm",
  "clean and dry": "limpio y seco",
  oiled: "aceitado",
  "of proof load": "de la carga de prueba",
  "a decimal this near is meant for a sixteenth": "un decimal así de cercano quiere decir un dieciseisavo",
  "straps, lock straps and self-locking plate bolts are used once: fit new ones":
    "las abrazaderas, las placas de seguridad y los tornillos autofrenados de placa se usan una sola vez: ponga nuevos",
  "the same: straps and self-locking bolts are used once":
    "lo mismo: las abrazaderas y los tornillos autofrenados se usan una sola vez",
  "the same: straps and their bolts are used once": "lo mismo: las abrazaderas y sus tornillos se usan una sola vez",
  "never a bolt of a lower grade, and never one that was used before":
    "nunca un tornillo de grado menor, y nunca uno ya usado",
  "a U-bolt that is too tight crushes the cap": "un perno en U demasiado apretado aplasta el dado",
  "T = K d F, F = 0.75 x proof x stress area": "T = K d F, F = 0,75 x carga de prueba x sección resistente",
  "A general bolt of that grade. K varies widely with coating and oil. The torque of the joint's or vehicle's maker always comes first.":
    "Un tornillo general de ese grado. K varía mucho con el recubrimiento y el aceite. El par del fabricante de la cruceta o del vehículo va siempre primero.",
  "A = pi/4 (d - 0.9743/n)^2, n threads per inch": "A = pi/4 (d - 0,9743/n)^2, n hilos por pulgada",
  "Unified threads.": "Roscas unificadas.",
  "A = pi/4 (d - 0.9382 p)^2": "A = pi/4 (d - 0,9382 p)^2",
  "Metric ISO threads.": "Roscas métricas ISO.",
  "renew the joint above this": "por encima de esto, cambiar la cruceta",
  "after fitting: none": "después de montar: nada",
  "after fitting, some models: none": "después de montar, algunos modelos: nada",
  "after fitting, equal clips both sides": "después de montar, anillos iguales a los dos lados",
  "after fitting, other models": "después de montar, otros modelos",
  "along the trunnions": "a lo largo de los muñones",
  "a cap in a full-round ear is pressed: no clearance": "un dado en una oreja cerrada va a presión: sin holgura",
  "at most 0.03 mm tighter than the bore": "a lo más 0,03 mm más apretado que el alojamiento",
  "float = groove to groove - over the caps - clip - clip":
    "juego = de ranura a ranura - sobre los dados - anillo - anillo",
  "Yoke from groove to groove over the ears. Bent ears, dirt under a clip and worn needles are not in it.":
    "Horquilla de ranura a ranura por encima de las orejas. Las orejas dobladas, la suciedad debajo de un anillo y las agujas gastadas no entran.",
  "float = ear to ear - inner groove faces - clip - clip":
    "juego = de oreja a oreja - caras interiores de ranura - anillo - anillo",
  "Yoke from ear to ear over the machined inner faces. Bent ears, dirt under a clip and worn needles are not in it.":
    "Horquilla de oreja a oreja sobre las caras interiores maquinadas. Las orejas dobladas, la suciedad debajo de un anillo y las agujas gastadas no entran.",
  "U = sqrt(U_yoke^2 + U_joint^2 + (U_clip + U_clip)^2)":
    "U = sqrt(U_horquilla^2 + U_cruceta^2 + (U_anillo + U_anillo)^2)",
  "Both clips read with the same tool: its error is the same on both and adds straight.":
    "Los dos anillos leídos con el mismo instrumento: su error es el mismo en los dos y se suma directamente.",
  "clearance = bore - cap": "holgura = alojamiento - dado",
  "Round parts at 20 °C.": "Piezas redondas a 20 °C.",
  "preferred: a third of the travel out": "preferido: un tercio del recorrido salido",
  "pushed home, then 3/4 to 1 in back, at ride height":
    "a fondo, y después de 3/4 a 1 in hacia atrás, a la altura de marcha",
  "at least half in normal work": "por lo menos la mitad en el trabajo normal",
  "at least a third in every position": "por lo menos un tercio en toda posición",
  "at least 40 mm from bottoming": "por lo menos 40 mm antes del tope",
  "at least 6 in": "por lo menos 6 in",
  "at least 2 in from bottoming": "por lo menos 2 in antes del tope",
  "at most 15 degrees": "a lo más 15 grados",
  "110 to 120 mm": "110 a 120 mm",
  "at least 250 mm": "por lo menos 250 mm",
  "centres = between faces - face to centre - face to centre; cut = centres - yoke - yoke - slip drawn out - gaps":
    "centros = entre caras - cara a centro - cara a centro; corte = centros - horquilla - horquilla - deslizante salido - separaciones",
  "Measured with the vehicle at ride height, on its wheels. Wear of the spline is not in it.":
    "Medido con el vehículo a su altura de marcha, sobre sus ruedas. El desgaste del estriado no entra.",
  "L = sqrt(run^2 + offset^2 + height^2)": "L = sqrt(distancia^2 + lado^2 + altura^2)",
  "The path of the axle must be given: how far it moves ahead or back as it rises depends on its links.":
    "Hay que dar el camino del eje: cuánto se adelanta o retrasa al subir depende de sus brazos.",
  "overlap and what is left before bottoming, beside each rule":
    "traslape y lo que queda antes del tope, al lado de cada regla",
  "Each rule is of one maker and holds for its machine.": "Cada regla es de un fabricante y vale para su máquina.",
  "5000 h at 3 degrees and 100 rev/min with the rated torque": "5000 h a 3 grados y 100 rev/min con el par nominal",
  "smaller angles count as 3 degrees": "los ángulos menores cuentan como 3 grados",
  "bearing capacity times arm, 90 % survive": "capacidad de los rodamientos por el brazo, 90 % sobrevive",
  "of torque": "del par",
  "of torque, about": "del par, aproximadamente",
  "mean life over B10, about": "vida media entre B10, aproximadamente",
  "section 4.7": "sección 4.7",
  "section 7": "sección 7",
  "problem 3.3-8": "problema 3.3-8",
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
  "net, or 0.95 of gross; gearbox 0.80 automatic, 0.85 manual; transfer case 0.95":
    "neto, o 0,95 del bruto; caja de cambios 0,80 automática, 0,85 manual; caja de transferencia 0,95",
  "0.95 of net, or 0.85 of gross; gearbox 0.95; nothing said of a transfer case":
    "0,95 del neto, o 0,85 del bruto; caja de cambios 0,95; no dice nada de una caja de transferencia",
  "tyre on road": "neumático en el camino",
  "of the axle; 11.4 in the printed form is 12 x 0.95": "del eje; 11,4 en la fórmula impresa es 12 x 0,95",
  "steel on steel, greased": "acero sobre acero, engrasado",
  "plastic-coated": "con recubrimiento plástico",
  "T = T_engine x rating x gear x gearbox x stall x transfer ratio x transfer":
    "T = T_motor x neto o bruto x marcha x caja x convertidor x relación de transferencia x transferencia",
  "Steady pull at the engine's greatest torque. Shock, as when a clutch is dropped, is not in it.":
    "Tiro constante con el par máximo del motor. Los golpes, como al soltar de golpe un embrague, no entran.",
  "T = friction x W x r / (axle ratio x axle efficiency)":
    "T = rozamiento x W x r / (relación del eje x rendimiento del eje)",
  "Level road. Weight that shifts to the axle when pulling away must be in its load.":
    "Camino nivelado. El peso que pasa al eje al arrancar tiene que estar en su carga.",
  "road use: the smaller of both, but no more than one series below the one for the low-gear torque; off the road: the low-gear torque":
    "uso en camino: el menor de los dos, pero no más de una serie por debajo de la que pide el par en marcha baja; fuera del camino: el par en marcha baja",
  "A rule for choosing a series of that maker.": "Una regla para elegir una serie de ese fabricante.",
  "Steady running, no losses.": "Marcha constante, sin pérdidas.",
  "tau = 16 T D / (pi (D^4 - d^4)); twist = 32 T L / (G pi (D^4 - d^4))":
    "tau = 16 T D / (pi (D^4 - d^4)); giro = 32 T L / (G pi (D^4 - d^4))",
  "Even round tube or bar, elastic. Welds, seams, dents, splines and fatigue are left out.":
    "Tubo o barra redondos y parejos, elásticos. Soldaduras, costuras, abolladuras, estriados y fatiga quedan fuera.",
  "Thin walls; r to the middle of the wall.": "Paredes delgadas; r hasta el medio de la pared.",
  "tau at yield = sigma / sqrt 3 (von Mises), sigma / 2 (Tresca)":
    "tau en la fluencia = sigma / sqrt 3 (von Mises), sigma / 2 (Tresca)",
  "First yield of sound metal under steady torque; nothing is taken off for shock or fatigue.":
    "Comienzo de la fluencia de metal sano bajo par constante; no se descuenta nada por golpes ni fatiga.",
  "driving shaft 0 ... T tan b, driven shaft T sin b ... 0, a quarter turn apart":
    "árbol conductor 0 ... T tan b, árbol conducido T sen b ... 0, a un cuarto de vuelta",
  "No friction. Twice a turn; which shaft has which is derived from the couple standing square to the cross, and so is the driven shaft's greatest past 45 degrees, T / (2 cos b).":
    "Sin rozamiento. Dos veces por vuelta; cuál árbol tiene cuál se deduce de que el par es perpendicular a la cruz, y lo mismo el máximo del árbol conducido más allá de 45 grados, T / (2 cos b).",
  "Load shared evenly by two trunnions; R to the middle of the needles.":
    "Carga repartida por igual entre dos muñones; R hasta el medio de las agujas.",
  "A = T cos b1 b/(L a) (tan b1 -+ tan b2), B = with (a + b), E, F alike with e, f; a quarter turn later T tan b1 / a, T sin b2 / (f cos b1)":
    "A = T cos b1 b/(L a) (tan b1 -+ tan b2), B = con (a + b), E, F igual con e, f; un cuarto de vuelta después T tan b1 / a, T sen b2 / (f cos b1)",
  "Z takes the difference, W the sum. One plane, yokes in line; the two positions only, weight and unbalance not in it.":
    "Z toma la diferencia, W la suma. Un plano, horquillas alineadas; solo las dos posiciones, sin peso ni desequilibrio.",
  "Sliding under full torque.": "Deslizando con todo el par.",
  "T rated = k T": "T nominal = k T",
  "Three points are printed. Between them the next higher is taken; up to 10 degrees k = 1.":
    "Hay tres puntos impresos. Entre ellos se toma el siguiente mayor; hasta 10 grados k = 1.",
  "arctan sqrt(tan^2 T + tan^2 S); exact from one shaft's axis":
    "arctan sqrt(tan^2 T + tan^2 S); exacta desde el eje de un árbol",
  "arccos(cos T cos S); exact with one shaft level": "arccos(cos T cos S); exacta con un árbol a nivel",
  "height = base x tan(change)": "altura = base x tan(cambio)",
  "The joint centres are taken to stay where they are. Set the change, then measure all angles again.":
    "Se toma que los centros de las juntas quedan donde están. Haga el cambio, y mida después todos los ángulos otra vez.",
  "arctan(rise/run), run level; arcsin(rise/run), run along the shaft":
    "arctan(altura/distancia), distancia a nivel; arcsen(altura/distancia), distancia a lo largo del cardán",
  "Between two points of the shaft's own axis.": "Entre dos puntos del propio eje del cardán.",
  "w = w_engine / (gear x transfer)": "w = w_motor / (marcha x transferencia)",
  "No slip of clutch or converter.": "Sin resbalamiento de embrague o convertidor.",
  "w = v axle / r; v[km/h] = 0.06 n U / (i_G i_V i_A)": "w = v eje / r; v[km/h] = 0,06 n U / (i_G i_V i_A)",
  "r is the radius the tyre rolls on under load, U = 2 pi r; a tyre grows at speed and shrinks as it wears.":
    "r es el radio con que rueda la rueda con carga, U = 2 pi r; un neumático crece con la velocidad y encoge con el desgaste.",
  "a trade page, not a maker's drawing or a standard":
    "una página del comercio, no un plano de fabricante ni una norma",
  "read in a copy of one page or table, not in the whole document":
    "leído en la copia de una página o tabla, no en el documento entero",
  "one machine's manual; holds for that machine": "manual de una máquina; vale para esa máquina",
  "a page that cites a guide of SAE it does not reprint": "una página que cita una guía de SAE que no reproduce",
  "from a copy of the solutions": "de una copia de las soluciones",
  "its power constants are rounded low": "sus constantes de potencia están redondeadas hacia abajo",
  "limits as printed in a tolerance table, not the standard itself":
    "límites como están impresos en una tabla de tolerancias, no la norma misma",
  "one line of it, 1/4-28 dry, is a misprint": "una de sus líneas, 1/4-28 en seco, es una errata",
  "prints its basis as 100 rad/s²; all its points fit 1000":
    "imprime su base como 100 rad/s²; todos sus puntos concuerdan con 1000",
  "its power column is read from a chart and does not fit its torques":
    "su columna de potencia está leída de un diagrama y no concuerda con sus pares",
  "(a maker of farm machines)": "(un fabricante de máquinas agrícolas)",
  "pages 005 and 009": "páginas 005 y 009",
  "DSSM-0100, printed p. 4": "DSSM-0100, p. 4 impresa",
  "technical section, pp. 38-46": "parte técnica, pp. 38-46",
  "J3311-1-DSSP Aug 2008, printed pp. 2, 5, 8, 10, 17": "J3311-1-DSSP, agosto de 2008, pp. 2, 5, 8, 10, 17 impresas",
  "J3299-2-DSSP June 2008, charts 1-3": "J3299-2-DSSP, junio de 2008, cuadros 1-3",
  "p. 69 of the copy": "p. 69 de la copia",
  "section of a printed trade catalogue": "parte de un catálogo impreso",
  "2006, section 4.7": "2006, sección 4.7",
  "catalogue p. K53": "catálogo, p. K53",
};

/** Un texto de los fundamentos en español; una fórmula sin palabras queda como está. */
export function grounded(text: string): string {
  return words[text] ?? text;
}
