// Sentences of the guideline data in Spanish, by their English text with numbers open. NOT reviewed. Data only.

/** `#1` is the first number of the English sentence, and so on. */
export const spanishSentences: Readonly<Record<string, string>> = {
  // Terms
  'blood pressure': 'presión arterial',
  'blood pressure at home': 'presión arterial en casa',
  'urine protein': 'proteína en orina',
  symptom: 'síntoma',
  'blood pressures': 'presiones arteriales',
  'the woman': 'la mujer',
  'urine and laboratory results': 'resultados de orina y laboratorio',
  'dating of the pregnancy and birth': 'fechas del embarazo y del parto',
  'symptoms and danger signs': 'síntomas y signos de peligro',
  'problems and diagnoses': 'problemas y diagnósticos',
  medicines: 'medicamentos',
  'medicines taken': 'medicamentos que toma',
  'open referrals': 'referencias abiertas',
  'the user': 'quien consulta',
  // What is missing
  'blood pressure, both halves': 'presión arterial, ambos valores',
  'Measure seated after rest, cuff fitting the arm, and record systolic and diastolic with unit and time.':
    'Mida sentada tras reposo, con manguito adecuado al brazo, y anote sistólica y diastólica con unidad y hora.',
  'a second blood pressure after the interval': 'una segunda presión arterial tras el intervalo',
  'Repeat the blood pressure after the interval, same arm, after rest.':
    'Repita la presión arterial tras el intervalo, en el mismo brazo, después de reposo.',
  'a series of home readings': 'una serie de lecturas en casa',
  'Record home readings over some days, where a validated device can be had.':
    'Anote lecturas en casa durante algunos días, donde se disponga de un aparato validado.',
  'Test a clean-catch sample by strip; send a protein/creatinine ratio where it can be had.':
    'Haga una tira en una muestra limpia; envíe un cociente proteína/creatinina donde se pueda.',
  'platelets, creatinine, liver enzymes': 'plaquetas, creatinina, enzimas hepáticas',
  'Take blood for platelets, creatinine and ALT or AST, here or at the place of referral.':
    'Tome sangre para plaquetas, creatinina y ALT o AST, aquí o en el lugar de referencia.',
  'platelets, AST, ALT, LDH': 'plaquetas, AST, ALT, LDH',
  'Complete the laboratory set now.': 'Complete ahora el conjunto de laboratorio.',
  'danger symptoms': 'síntomas de peligro',
  'Ask about headache, sight, pain under the ribs and breathlessness, and record the answers.':
    'Pregunte por dolor de cabeza, visión, dolor bajo las costillas y falta de aire, y anote las respuestas.',
  'the pressure of the visits to come': 'la presión de las visitas siguientes',
  'Measure at every visit: one more raised contact confirms.':
    'Mida en cada visita: otra toma elevada la confirma.',
  // Referral
  'Emergency transfer to a hospital able to operate and to give intensive care.':
    'Traslado de emergencia a un hospital que pueda operar y dar cuidados intensivos.',
  'Referral to hospital, to be seen the same day.': 'Referencia al hospital, para ser vista el mismo día.',
  'Referral to hospital, to be seen within # hours.': 'Referencia al hospital, para ser vista en #1 horas.',
  'Referral to a specialist or medical officer clinic.':
    'Referencia a la consulta del especialista o médico.',
  // Said with many steps
  'Per local protocol; the prescriber decides.': 'Según el protocolo local; decide quien prescribe.',
  'Senior review of the timing of birth; this service does not decide it.':
    'Revisión por un experto del momento del parto; este servicio no lo decide.',
  // Terms of what is missing
  platelets: 'plaquetas',
  creatinine: 'creatinina',
  'liver enzymes': 'enzimas hepáticas',
  ALT: 'ALT',
  AST: 'AST',
  LDH: 'LDH',
  headache: 'dolor de cabeza',
  'visual disturbance': 'trastorno visual',
  'epigastric pain': 'dolor epigástrico',
  dyspnoea: 'disnea',
  vomiting: 'vómitos',
  nausea: 'náuseas',
  'chest pain': 'dolor de pecho',
  clonus: 'clonus',
  hyperreflexia: 'hiperreflexia',
  'altered mental status': 'alteración de la conciencia',
  coma: 'coma',
  seizure: 'convulsión',
  oliguria: 'oliguria',
  'vaginal bleeding': 'sangrado vaginal',
  'abdominal pain': 'dolor abdominal',
  'reduced fetal movement': 'disminución de movimientos fetales',
  oedema: 'edema',
  'pulmonary oedema': 'edema pulmonar',
  'lung crackles': 'estertores pulmonares',
  'oxygen saturation': 'saturación de oxígeno',
  aspirin: 'aspirina',
  calcium: 'calcio',
  bilirubin: 'bilirrubina',
  'urine protein/creatinine ratio': 'cociente proteína/creatinina en orina',
  'blood pressure that cannot be used': 'presión arterial que no se puede usar',
  // Urgency
  'A seizure, whatever its cause.': 'Una convulsión, cualquiera que sea su causa.',
  'A severe reading: act, and repeat within minutes.': 'Una lectura grave: actúe y repita en minutos.',
  'The home average is in the severe range.': 'El promedio en casa está en rango grave.',
  'Severe pressure, confirmed and not settled.': 'Presión grave, confirmada y sin calmarse.',
  'Raised pressure with a danger symptom.': 'Presión elevada con un síntoma de peligro.',
  'HELLP.': 'HELLP.',
  'Pre-eclampsia with severe features.': 'Preeclampsia con signos de gravedad.',
  'Pre-eclampsia with an organ severely involved.': 'Preeclampsia con un órgano gravemente afectado.',
  'Pulmonary oedema.': 'Edema pulmonar.',
  'Vaginal bleeding with abdominal pain: possible abruption.':
    'Sangrado vaginal con dolor abdominal: posible desprendimiento.',
  'A blood pressure that cannot be used and may be severe: repeat now.':
    'Una presión que no se puede usar y puede ser grave: repita ahora.',
  'A blood pressure that cannot be used: re-enter or repeat now.':
    'Una presión que no se puede usar: anótela de nuevo o repita ahora.',
  'Pre-eclampsia.': 'Preeclampsia.',
  'Postpartum pre-eclampsia with raised pressure.': 'Preeclampsia posparto con presión elevada.',
  'Raised and not confirmed: repeat by the clock.': 'Elevada y sin confirmar: repita según el reloj.',
  'Raised pressure from #+# weeks on.': 'Presión elevada desde las #1+#2 semanas.',
  'Raised again, and the confirming readings lie too far apart: a fresh pair is needed.':
    'Elevada de nuevo, y las lecturas que confirman están muy separadas: hace falta un nuevo par.',
  'Raised pressure at unknown length of pregnancy.': 'Presión elevada con tiempo de embarazo desconocido.',
  'Severe pressure was confirmed in this pregnancy.': 'En este embarazo se confirmó presión grave.',
  'A danger symptom with normal pressure: examine, repeat, take blood.':
    'Un síntoma de peligro con presión normal: examine, repita, tome sangre.',
  'Reduced fetal movement with hypertension.': 'Menos movimientos fetales con hipertensión.',
  'A medicine to be avoided in pregnancy is in use.': 'Usa un medicamento que debe evitarse en el embarazo.',
  'The platelets are falling: the count is repeated within a day.':
    'Las plaquetas descienden: el recuento se repite en un día.',
  'Protein with normal pressure.': 'Proteína con presión normal.',
  'Hypertension after birth.': 'Hipertensión después del parto.',
  'Chronic hypertension.': 'Hipertensión crónica.',
  'Hypertension of this pregnancy, also while it is settled or controlled.':
    'Hipertensión de este embarazo, también mientras está calmada o controlada.',
  'Raised once and settled.': 'Elevada una vez y calmada.',
  // Medicines
  'Not in pregnancy: agents of the renin-angiotensin system harm the baby.':
    'No en el embarazo: los fármacos del sistema renina-angiotensina dañan al bebé.',
  'Stop, and replace within # working days of the news of pregnancy.':
    'Suspenda y sustituya en #1 días hábiles desde la noticia del embarazo.',
  'Avoid in pregnancy: atenolol slows the growth of the baby.':
    'Evite en el embarazo: el atenolol frena el crecimiento del bebé.',
  'Avoid in pregnancy: spironolactone and eplerenone.': 'Evite en el embarazo: espironolactona y eplerenona.',
  'Statins are usually stopped in pregnancy.': 'Las estatinas suelen suspenderse en el embarazo.',
  'Never under the tongue: the pressure falls too fast.':
    'Nunca bajo la lengua: la presión cae demasiado rápido.',
  'NSAIDs are avoided in the second half of pregnancy: kidney of the baby, amniotic fluid, ductus.':
    'Los AINE se evitan en la segunda mitad del embarazo: riñón del bebé, líquido amniótico, ductus.',
  'Labetalol is avoided with asthma, heart block, heart failure and a slow pulse.':
    'El labetalol se evita con asma, bloqueo cardíaco, insuficiencia cardíaca y pulso lento.',
};
