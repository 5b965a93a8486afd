// Steps of the guideline data in Spanish, by their English text with numbers open. NOT reviewed. Data only.

/** `#1` is the first number of the English sentence, and so on. */
export const spanishSteps: Readonly<Record<string, string>> = {
  // Repeat
  'Let her rest, check the cuff, and repeat the pressure before #:#, which is # minutes after the reading at #:#.':
    'Déjela reposar, revise el manguito y repita la presión antes de las #1:#2, es decir #3 minutos después de la lectura de las #4:#5.',
  'Let her rest, check the cuff, and repeat the pressure before # minutes from the reading.':
    'Déjela reposar, revise el manguito y repita la presión antes de #1 minutos desde la lectura.',
  'She does not go home before it is repeated.': 'No se va a casa antes de que se repita.',
  'Let her rest, check the cuff, and repeat the pressure now: it was due before #:#.':
    'Déjela reposar, revise el manguito y repita la presión ahora: debía repetirse antes de las #1:#2.',
  'Let her rest, check the cuff, and repeat the pressure now: it was due before #:# on #-#-#.':
    'Déjela reposar, revise el manguito y repita la presión ahora: debía repetirse antes de las #1:#2 del #3-#4-#5.',
  'Repeat the pressure now: it was due after #:#.':
    'Repita la presión ahora: debía repetirse después de las #1:#2.',
  'Repeat the pressure now: it was due after #:# on #-#-#.':
    'Repita la presión ahora: debía repetirse después de las #1:#2 del #3-#4-#5.',
  'Repeat the pressure after #:# on #-#-#, which is # hours after the reading at #:#.':
    'Repita la presión después de las #1:#2 del #3-#4-#5, es decir #6 horas después de la lectura de las #7:#8.',
  'Repeat the pressure after #:#, which is # hours after the reading at #:# on #-#-#.':
    'Repita la presión después de las #1:#2, es decir #3 horas después de la lectura de las #4:#5 del #6-#7-#8.',
  'Let her rest, check the cuff, and repeat the pressure before #:# on #-#-#, which is # minutes after the reading at #:#.':
    'Déjela reposar, revise el manguito y repita la presión antes de las #1:#2 del #3-#4-#5, es decir #6 minutos después de la lectura de las #7:#8.',
  'Let her rest, check the cuff, and repeat the pressure before #:#, which is # minutes after the reading at #:# on #-#-#.':
    'Déjela reposar, revise el manguito y repita la presión antes de las #1:#2, es decir #3 minutos después de la lectura de las #4:#5 del #6-#7-#8.',
  'The pressure received cannot be used: measure again now, and enter both halves with unit and time.':
    'La presión recibida no se puede usar: mida de nuevo ahora y anote ambos valores con unidad y hora.',
  'If she is unwell, act on the woman, not on the number.':
    'Si se siente mal, actúe según la mujer, no según el número.',
  'Repeat the pressure after #:#, which is # hours after the reading at #:#.':
    'Repita la presión después de las #1:#2, es decir #3 horas después de la lectura de las #4:#5.',
  'Repeat the pressure after #:#, which is # minutes after the reading at #:#.':
    'Repita la presión después de las #1:#2, es decir #3 minutos después de la lectura de las #4:#5.',
  'Repeat the pressure after # hours from the reading.': 'Repita la presión #1 horas después de la lectura.',
  'Repeat the pressure after # minutes from the reading.':
    'Repita la presión #1 minutos después de la lectura.',
  'Repeat the pressure the same day; this publication names no interval.':
    'Repita la presión el mismo día; esta publicación no nombra intervalo.',
  'The raised readings lie more than a week apart: take a fresh pair.':
    'Entre las lecturas elevadas hay más de una semana: tome un nuevo par.',
  // Measure
  'Before the repeat: # to # minutes of rest, seated, back and arm supported, bare arm at the level of the heart.':
    'Antes de repetir: de #1 a #2 minutos de reposo, sentada, espalda y brazo apoyados, brazo desnudo a la altura del corazón.',
  'The lower edge of the cuff lies # cm (two fingers) above the crease of the elbow.':
    'El borde inferior del manguito queda #1 cm (dos dedos) por encima del pliegue del codo.',
  'By hand: inflate # mmHg beyond the pressure at which the pulse disappears, then let down slowly.':
    'A mano: infle #1 mmHg más allá de la presión a la que desaparece el pulso y baje despacio.',
  'Take the pressure at every antenatal visit, whatever the visit is for.':
    'Tome la presión en cada control prenatal, sea cual sea su motivo.',
  'The pressure is in the severe range (a diastolic above # mmHg alone is a sign of severe disease): test the urine at once.':
    'La presión está en el rango grave (una diastólica por encima de #1 mmHg ya es signo de enfermedad grave): examine la orina de inmediato.',
  'Test the urine for protein now.': 'Examine ahora la proteína en orina.',
  'Send urine for a protein/creatinine ratio: a strip alone is not a measurement.':
    'Envíe orina para el cociente proteína/creatinina: una tira sola no es una medición.',
  'Trace protein is not yet proteinuria: repeat the strip on a fresh clean-catch sample.':
    'Trazas de proteína aún no son proteinuria: repita la tira en una muestra limpia reciente.',
  'Look for a urinary infection, repeat the strip on a clean-catch sample, and check the pressure weekly.':
    'Busque infección urinaria, repita la tira en una muestra limpia y controle la presión cada semana.',
  'Arrange an ultrasound scan and hCG: exclude trophoblastic disease; think of kidney disease and antiphospholipid syndrome.':
    'Solicite ecografía y hCG: descarte enfermedad trofoblástica; piense en enfermedad renal y síndrome antifosfolípido.',
  'Ask whether she is pregnant, and test where it is not certain; repeat the pressure, and arrange a review for chronic hypertension.':
    'Pregunte si está embarazada y haga una prueba si no es seguro; repita la presión y organice una revisión por hipertensión crónica.',
  'Find out the length of the pregnancy: last period, scan, or height of the fundus.':
    'Averigüe el tiempo de embarazo: última regla, ecografía o altura uterina.',
  'Repeat the pressure, test the urine, and take platelets, liver enzymes and creatinine: HELLP and atypical disease occur at normal pressure.':
    'Repita la presión, examine la orina y tome plaquetas, enzimas hepáticas y creatinina: HELLP y formas atípicas ocurren con presión normal.',
  'Ask whether epilepsy is known and treated; until that is certain, treat as eclampsia per local protocol.':
    'Pregunte si tiene epilepsia conocida y tratada; hasta saberlo, trate como eclampsia según el protocolo local.',
  'A medicine for pressure was in use early in the pregnancy: ask for what, and whether the pressure was raised before.':
    'Usaba un medicamento para la presión al inicio del embarazo: pregunte para qué, y si la presión ya era elevada antes.',
  'Reduced fetal movement: listen to the fetal heart and assess the fetus today.':
    'Menos movimientos fetales: escuche el corazón fetal y valore al feto hoy.',
  'Kidney disease is on record: protein alone cannot diagnose pre-eclampsia; compare with her earlier ratio and creatinine.':
    'Consta enfermedad renal: la proteína sola no diagnostica preeclampsia; compare con su cociente y creatinina anteriores.',
  // What speaks against a drug
  'Not labetalol: asthma is on record.': 'Labetalol no: consta asma.',
  'Not labetalol: heart block is on record.': 'Labetalol no: consta bloqueo cardíaco.',
  'Not labetalol: heart failure is on record.': 'Labetalol no: consta insuficiencia cardíaca.',
  'Not labetalol: a slow pulse is on record.': 'Labetalol no: consta pulso lento.',
  'Not labetalol: an allergy to it is on record.': 'Labetalol no: consta alergia.',
  'Not a beta-blocker: asthma is on record.': 'Betabloqueante no: consta asma.',
  'Not a beta-blocker: heart block is on record.': 'Betabloqueante no: consta bloqueo cardíaco.',
  'Not a beta-blocker: heart failure is on record.': 'Betabloqueante no: consta insuficiencia cardíaca.',
  'Not a beta-blocker: a slow pulse is on record.': 'Betabloqueante no: consta pulso lento.',
  'Not a beta-blocker: an allergy to it is on record.': 'Betabloqueante no: consta alergia.',
  'Not nifedipine: an allergy to it is on record.': 'Nifedipino no: consta alergia.',
  'Not methyldopa: depression is on record.': 'Metildopa no: consta depresión.',
  'Not methyldopa: an allergy to it is on record.': 'Metildopa no: consta alergia.',
  'Not hydralazine: an allergy to it is on record.': 'Hidralazina no: consta alergia.',
  'Not magnesium sulfate: an allergy to it is on record.': 'Sulfato de magnesio no: consta alergia.',
  'Not enalapril: an allergy to it is on record.': 'Enalapril no: consta alergia.',
  'Not amlodipine: an allergy to it is on record.': 'Amlodipino no: consta alergia.',
  'Asthma is on record.': 'Consta asma.',
  'Heart block is on record.': 'Consta bloqueo cardíaco.',
  'Heart failure is on record.': 'Consta insuficiencia cardíaca.',
  'A slow pulse is on record.': 'Consta pulso lento.',
  'Depression is on record.': 'Consta depresión.',
  'An allergy to it is on record.': 'Consta alergia a este medicamento.',
  'An allergy to this medicine, or to one of its class, is on record.':
    'Consta alergia a este medicamento o a uno de su clase.',
  // Before transfer
  'Call the receiving hospital.': 'Llame al hospital que la recibe.',
  'Lay her on her left side and keep the airway free; never leave her alone.':
    'Acuéstela sobre el lado izquierdo y mantenga libre la vía aérea; nunca la deje sola.',
  'Possible pulmonary oedema: sit her up, give oxygen, and restrict fluids.':
    'Posible edema pulmonar: siéntela, dé oxígeno y restrinja líquidos.',
  'Magnesium sulfate, loading dose: # g of #% into a vein over # to # minutes, then # g of #% deep into each buttock; where the full course cannot be given, the loading dose and then transfer.':
    'Sulfato de magnesio, dosis de carga: #1 g al #2% en vena en #3 a #4 minutos, luego #5 g al #6% profundo en cada glúteo; donde no se pueda dar el curso completo, la dosis de carga y después el traslado.',
  'Magnesium was given or is running: no second loading dose.':
    'El magnesio ya se dio o está pasando: sin segunda dosis de carga.',
  'Magnesium is on order: if it was given, no second loading dose.':
    'El magnesio está ordenado: si ya se dio, sin segunda dosis de carga.',
  'An order of magnesium is on record, and no dose with its time: if it was given, no second loading dose.':
    'Consta una orden de magnesio y ninguna dosis con su hora: si ya se dio, sin segunda dosis de carga.',
  'Breathing is slow on magnesium: stop it.': 'La respiración es lenta con magnesio: deténgalo.',
  'Slow breathing on magnesium.': 'Respiración lenta con magnesio.',
  'Breathing is slow on magnesium: stop it now, give calcium gluconate # g (# mL of #%) into a vein, slowly, over about # minutes, and help her breathe.':
    'La respiración es lenta con magnesio: deténgalo ya, dé gluconato de calcio #1 g (#2 mL al #3%) en vena, despacio, en unos #4 minutos, y ayúdela a respirar.',
  'Magnesium goes on for # hours after the last fit or birth, whichever is later.':
    'El magnesio sigue #1 horas después de la última convulsión o del parto, lo que sea más tarde.',
  'Magnesium is on order already: two orders, one loading dose.':
    'El magnesio ya está ordenado: dos órdenes, una sola dosis de carga.',
  'Only after a further fit: # to # g more, slowly into a vein.':
    'Solo tras otra convulsión: de #1 a #2 g más, lentamente en vena.',
  'Before each further dose of magnesium: breathing at least # per minute, knee jerk present, urine at least # mL per hour over # hours.':
    'Antes de cada dosis siguiente de magnesio: respiración al menos #1 por minuto, reflejo rotuliano presente, orina al menos #2 mL por hora en #3 horas.',
  'If one is lost, no further dose.': 'Si falta uno, no dé más dosis.',
  'Signs of magnesium toxicity: stop it and give calcium gluconate # g (# mL of #%) into a vein, slowly, over about # minutes.':
    'Signos de toxicidad por magnesio: deténgalo y dé gluconato de calcio #1 g (#2 mL al #3%) en vena, despacio, en unos #4 minutos.',
  'Diazepam or phenytoin do not take the place of magnesium.':
    'El diazepam o la fenitoína no sustituyen al magnesio.',
  'Lower severe pressure within # to # minutes of its confirmation, to # to #/# to # mmHg: to lower, not to normalise.':
    'Baje la presión grave en #1 a #2 minutos desde su confirmación, a #3-#4/#5-#6 mmHg: bajar, no normalizar.',
  'Keep a drug for severe pressure ready; give it when the repeat is severe too.':
    'Tenga listo un fármaco para la presión grave; délo si la repetición también es grave.',
  'Catheter, and count the urine; restrict fluids to # mL per hour.':
    'Sonda y medición de orina; limite los líquidos a #1 mL por hora.',
  'A trained person travels with her.': 'La acompaña una persona capacitada.',
  'Send a copy of the chart with times and doses.': 'Envíe copia de la historia con horas y dosis.',
  // Investigations
  'Take blood: full count with platelets, liver enzymes, creatinine.':
    'Tome sangre: hemograma con plaquetas, enzimas hepáticas, creatinina.',
  'Baseline for later comparison: creatinine, platelets, liver enzymes and a urine protein/creatinine ratio.':
    'Valores de base para comparar después: creatinina, plaquetas, enzimas hepáticas y cociente proteína/creatinina en orina.',
  'Complete the set: LDH, bilirubin, AST and ALT, platelets, blood film and clotting; repeat a haemolysed sample at once.':
    'Complete el conjunto: LDH, bilirrubina, AST y ALT, plaquetas, frotis y coagulación; repita de inmediato una muestra hemolizada.',
  'Ultrasound at diagnosis: growth, liquor, umbilical artery flow.':
    'Ecografía al diagnóstico: crecimiento, líquido, flujo de la arteria umbilical.',
  'Growth scans at #, # and # weeks.': 'Ecografías de crecimiento a las #1, #2 y #3 semanas.',
  'Listen to the fetal heart.': 'Escuche el corazón fetal.',
  // Treatment and prevention
  'A drug is started while the pressure stays at #/# mmHg or above; ACOG and the Indian deck start later in gestational hypertension.':
    'Se inicia un fármaco mientras la presión siga en #1/#2 mmHg o más; ACOG y la presentación india empiezan más tarde en la hipertensión gestacional.',
  'Labetalol, nifedipine (extended release) or methyldopa by mouth.':
    'Labetalol, nifedipino (liberación prolongada) o metildopa por vía oral.',
  'On treatment aim for #/# mmHg or less; reduce when it stays below # systolic or # diastolic or she feels faint.':
    'En tratamiento, busque #1/#2 mmHg o menos; reduzca si queda por debajo de #3 de sistólica o #4 de diastólica o si se marea.',
  'Aspirin to prevent pre-eclampsia is indicated and not on record: ask, and offer it.':
    'La aspirina para prevenir la preeclampsia está indicada y no consta: pregunte y ofrézcala.',
  // Follow-up
  'Pressure and urine # to # times a week, until the pressure is #/# mmHg or less; blood tests weekly; a scan every # to # weeks.':
    'Presión y orina de #1 a #2 veces por semana, hasta que la presión sea #3/#4 mmHg o menos; análisis semanales; ecografía cada #5 a #6 semanas.',
  'In hospital: pressure every # to # minutes until it is below the severe limits; urine daily, blood weekly, a scan every # weeks.':
    'En el hospital: presión cada #1 a #2 minutos hasta que baje de los límites graves; orina diaria, sangre semanal, ecografía cada #3 semanas.',
  'Pressure at least every # hours; blood # times a week; a scan every # weeks.':
    'Presión al menos cada #1 horas; sangre #2 veces por semana; ecografía cada #3 semanas.',
  'In hospital: pressure every # to # minutes until below the severe limits, then at least # times a day; blood # times a week; a scan every # weeks.':
    'En el hospital: presión cada #1 a #2 minutos hasta bajar de los límites graves, luego al menos #3 veces al día; sangre #4 veces por semana; ecografía cada #5 semanas.',
  'Visits every # to # weeks while the pressure is controlled.':
    'Visitas cada #1 a #2 semanas mientras la presión esté controlada.',
  'The pressure is not controlled: a visit every # week.':
    'La presión no está controlada: una visita cada #1 semana.',
  'Settled is not the same as normal: measure at every visit and test the urine; it may come back.':
    'Calmada no es lo mismo que normal: mida en cada visita y examine la orina; puede volver.',
  'Go on measuring at home and in the clinic; part of these women develop hypertension later.':
    'Siga midiendo en casa y en la consulta; parte de estas mujeres desarrolla hipertensión después.',
  'More than one fetus: the same limits, more frequent visits; growth-factor ratios are not validated for her.':
    'Más de un feto: los mismos límites, visitas más frecuentes; los cocientes de factores de crecimiento no están validados para ella.',
  'The length of the pregnancy is not known: see her again within the week at the latest.':
    'No se conoce el tiempo de embarazo: véala de nuevo en una semana a más tardar.',
  // Birth
  'First stabilise her, then birth.': 'Primero estabilícela, luego el parto.',
  'Steroids are not given to treat HELLP; for the lungs of a preterm baby they are another question.':
    'No se dan esteroides para tratar el HELLP; para los pulmones de un prematuro es otra cuestión.',
  'In pre-eclampsia publications name #+# weeks; with severe features earlier.':
    'En la preeclampsia las publicaciones nombran #1+#2 semanas; con signos de gravedad, antes.',
  'In gestational or chronic hypertension not before #+# weeks while below the severe limits.':
    'En la hipertensión gestacional o crónica, no antes de #1+#2 semanas mientras esté por debajo de los límites graves.',
  // After birth
  'The pressure peaks # to # days after birth.': 'La presión es máxima de #1 a #2 días después del parto.',
  'Measure daily for the first # days, and at least once on day # to #.':
    'Mida a diario los primeros #1 días, y al menos una vez el día #2 a #3.',
  'After pre-eclampsia without drugs: at least # times a day while in hospital, once on day # to #, and on alternate days if that was abnormal.':
    'Tras preeclampsia sin fármacos: al menos #1 veces al día en el hospital, una vez el día #2 a #3, y en días alternos si fue anormal.',
  'Measure at least once on day # to #: the pressure peaks # to # days after birth.':
    'Mida al menos una vez el día #1 a #2: la presión es máxima de #3 a #4 días después del parto.',
  'Measure at every contact until the review # to # weeks after birth.':
    'Mida en cada contacto hasta la revisión de #1 a #2 semanas tras el parto.',
  'After pre-eclampsia without drugs: on alternate days where the pressure of day # to # was not normal.':
    'Tras preeclampsia sin fármacos: en días alternos si la presión del día #1 a #2 no fue normal.',
  'Ask about headache and pain under the ribs each time.':
    'Pregunte cada vez por dolor de cabeza y dolor bajo las costillas.',
  'On drugs: measure every # to # days for up to # weeks, until the pressure is controlled.':
    'Con fármacos: mida cada #1 a #2 días hasta #3 semanas, hasta controlar la presión.',
  'Treatment after birth starts from #/# mmHg.': 'El tratamiento después del parto empieza desde #1/#2 mmHg.',
  'Below #/# mmHg on treatment: reduce the drug; below #/# mmHg it may be considered.':
    'Por debajo de #1/#2 mmHg en tratamiento: reduzca el fármaco; por debajo de #3/#4 mmHg puede considerarse.',
  'Methyldopa is stopped within # days after birth and replaced where a drug is still needed.':
    'La metildopa se suspende en #1 días tras el parto y se sustituye si aún se necesita un fármaco.',
  'Platelets, liver enzymes and creatinine # to # hours after birth; repeat when not normal.':
    'Plaquetas, enzimas hepáticas y creatinina de #1 a #2 horas tras el parto; repita si no son normales.',
  'Platelets, liver enzymes and creatinine were due # to # hours after birth: take them if they were not taken; repeat when not normal.':
    'Plaquetas, enzimas hepáticas y creatinina debían tomarse de #1 a #2 horas tras el parto: tómelas si no se tomaron; repita si no son normales.',
  'Hypertension that is new after birth: test the urine, take blood, ask about headache; it may be late pre-eclampsia.':
    'Hipertensión nueva después del parto: examine la orina, tome sangre, pregunte por dolor de cabeza; puede ser preeclampsia tardía.',
  'Medical review # to # weeks after birth, for every woman who had hypertension in pregnancy: pressure, drugs, plans.':
    'Revisión médica de #1 a #2 semanas tras el parto, para toda mujer que tuvo hipertensión en el embarazo: presión, fármacos, planes.',
  'The medical review # to # weeks after birth is due, as for every woman who had hypertension in pregnancy: pressure, drugs, plans.':
    'Corresponde ahora la revisión médica de #1 a #2 semanas tras el parto, como para toda mujer que tuvo hipertensión en el embarazo: presión, fármacos, planes.',
  'Test the urine by strip now; with one plus or more, a kidney review at # months.':
    'Examine ahora la orina con tira; con una cruz o más, revisión renal a los #1 meses.',
  'Protein at the review: a kidney review at # months after birth.':
    'Proteína en la revisión: revisión renal a los #1 meses tras el parto.',
  'Urine strip at that review; with one plus or more, a kidney review at # months.':
    'Tira de orina en esa revisión; con una cruz o más, revisión renal a los #1 meses.',
  'Ask how she feeds the baby before choosing a drug.':
    'Pregunte cómo alimenta al bebé antes de elegir un fármaco.',
  // Later
  'About #% have hypertension again in the next pregnancy: book early and ask about aspirin then.':
    'Alrededor del #1% vuelve a tener hipertensión en el siguiente embarazo: acuda pronto y pregunte entonces por la aspirina.',
  'After pre-eclampsia up to about #% have it again; #% after a birth at # to # weeks, #% after one at # to # weeks.':
    'Tras preeclampsia hasta cerca del #1% la repite; #2% tras un parto a las #3 a #4 semanas, #5% tras uno a las #6 a #7 semanas.',
  'After gestational hypertension # to #% have pre-eclampsia next time.':
    'Tras hipertensión gestacional, del #1 al #2% tiene preeclampsia la próxima vez.',
  'Her risk of disease of the heart and vessels is raised for life: pressure once a year, weight, tobacco, exercise; write it in the record that her own doctor sees.':
    'Su riesgo de enfermedad del corazón y los vasos es mayor de por vida: presión una vez al año, peso, tabaco, ejercicio; anótelo en la historia que ve su médico.',
  'If the pressure is still raised # weeks after birth, it is chronic hypertension: investigate.':
    'Si la presión sigue elevada #1 semanas después del parto, es hipertensión crónica: estudie.',
  // Tell the woman
  'Tell her to come at once, by day or night, with severe headache, blurred sight or flashes, pain under the ribs, vomiting, breathlessness, sudden swelling of face, hands or feet, fits, or bleeding.':
    'Dígale que venga de inmediato, de día o de noche, con dolor de cabeza intenso, visión borrosa o destellos, dolor bajo las costillas, vómitos, falta de aire, hinchazón repentina de cara, manos o pies, convulsiones o sangrado.',
  'Tell her to come the same day when the baby moves less than usual.':
    'Dígale que venga el mismo día si el bebé se mueve menos de lo habitual.',
  'Tell her and her family why she is sent, where to, and that she goes now.':
    'Explique a ella y a su familia por qué se la envía, adónde, y que va ahora.',
  'Tell her to go on with her tablets for pressure until she is told otherwise, and to bring them along.':
    'Dígale que siga con sus pastillas para la presión hasta que se le indique otra cosa, y que las traiga.',
  // Steps of the first level
  'Let her rest, check the cuff, and repeat the pressure before #:#, which is # hours after the reading at #:#.':
    'Déjela reposar, revise el manguito y repita la presión antes de las #1:#2, es decir #3 horas después de la lectura de las #4:#5.',
  'The platelets are falling: repeat the count within a day, with liver enzymes and LDH.':
    'Las plaquetas bajan: repita el recuento en un día, con enzimas hepáticas y LDH.',
  'Lay her on her left side (breathless: sit her up) and keep the airway free; never leave her alone.':
    'Acuéstela sobre el lado izquierdo (si le falta el aire, siéntela) y mantenga libre la vía aérea; nunca la deje sola.',
  'A severe reading waits for its repeat: keep a drug for severe pressure ready.':
    'Una lectura grave espera su repetición: tenga listo un fármaco para la presión grave.',
  'Where it can be had, one growth-factor test (PlGF) helps to rule pre-eclampsia in or out from #+# to #+# weeks; it never decides early birth and never cancels a danger sign.':
    'Donde se disponga, una prueba de factor de crecimiento (PlGF) ayuda a confirmar o descartar preeclampsia de #1+#2 a #3+#4 semanas; nunca decide un parto temprano ni anula un signo de peligro.',
  'Come at once, by day or night, if you have severe headache, blurred sight or flashes, pain under the ribs, vomiting, trouble breathing, sudden swelling of face, hands or feet, fits, or bleeding.':
    'Venga de inmediato, de día o de noche, si tiene dolor de cabeza intenso, visión borrosa o destellos, dolor bajo las costillas, vómitos, dificultad para respirar, hinchazón repentina de cara, manos o pies, convulsiones o sangrado.',
  'Come the same day if your baby moves less than usual.':
    'Venga el mismo día si su bebé se mueve menos de lo habitual.',
  'You are sent to hospital because what was found today can become dangerous for you and your baby.':
    'La enviamos al hospital porque lo hallado hoy puede volverse peligroso para usted y su bebé.',
  'Do not wait: go today, with someone beside you.': 'No espere: vaya hoy, acompañada.',
  'Go on taking your tablets for pressure until you are told otherwise, and bring them with you.':
    'Siga tomando sus pastillas para la presión hasta que le indiquen otra cosa, y tráigalas.',
  'At the next level: Senior review of the timing of birth; this service does not decide it.':
    'En el siguiente nivel: revisión por un experto del momento del parto; este servicio no lo decide.',
  'Severe pressure: today.': 'Presión grave: hoy.',
};
