// What we accept: the shapes to send. Other shapes are read too; README and the account of each answer tell which.
Alias: $loinc = http://loinc.org
Alias: $vsPanel = https://pregnancy-htn.example/fhir/ValueSet/blood-pressure-panel
Alias: $vsPressureUnit = https://pregnancy-htn.example/fhir/ValueSet/pressure-unit
Alias: $vsStrip = https://pregnancy-htn.example/fhir/ValueSet/urine-protein-strip
Alias: $vsStripValue = https://pregnancy-htn.example/fhir/ValueSet/urine-protein-strip-value
Alias: $vsRatio = https://pregnancy-htn.example/fhir/ValueSet/urine-protein-ratio
Alias: $vsRatioUnit = https://pregnancy-htn.example/fhir/ValueSet/protein-ratio-unit
Alias: $vsAge = https://pregnancy-htn.example/fhir/ValueSet/gestational-age
Alias: $vsAgeUnit = https://pregnancy-htn.example/fhir/ValueSet/gestational-age-unit
Alias: $vsSymptom = https://pregnancy-htn.example/fhir/ValueSet/symptom
Alias: $vsLaboratory = https://pregnancy-htn.example/fhir/ValueSet/laboratory-result

RuleSet: Published
* ^status = #active
* ^experimental = false
* ^date = "2026-11-25"
* ^version = "1.0.0"
* ^publisher = "pregnancy-htn"

RuleSet: Observed
* subject 1..1
* subject only Reference(Patient)
* effective[x] 1..1

Profile: AcceptedBloodPressure
Parent: Observation
Id: accepted-blood-pressure
Title: "Blood pressure as it is read"
Description: "One reading: systolic and diastolic as components, or one of them. Two stand-alone observations, members of a panel and other shapes are read too; this is the shape to send."
* insert Published
* insert Observed
* code from $vsPanel (extensible)
* value[x] 0..0
* component 1..*
* component ^slicing.discriminator.type = #pattern
* component ^slicing.discriminator.path = "code"
* component ^slicing.rules = #open
* component contains systolic 0..1 and diastolic 0..1
* component[systolic].code = $loinc#8480-6
* component[systolic].value[x] only Quantity
* component[systolic].valueQuantity from $vsPressureUnit (required)
* component[diastolic].code = $loinc#8462-4
* component[diastolic].value[x] only Quantity
* component[diastolic].valueQuantity from $vsPressureUnit (required)

Profile: AcceptedUrineProteinStrip
Parent: Observation
Id: accepted-urine-protein-strip
Title: "Urine protein strip as it is read"
Description: "A strip as coded answer, as text such as 2+ or trace, or as the number that the strip prints on its colour bin."
* insert Published
* insert Observed
* code from $vsStrip (extensible)
* value[x] only CodeableConcept or string or Quantity or integer
* valueCodeableConcept from $vsStripValue (extensible)

Profile: AcceptedProteinCreatinineRatio
Parent: Observation
Id: accepted-protein-creatinine-ratio
Title: "Protein or albumin to creatinine ratio as it is read"
Description: "Quantified protein of one urine sample, with its unit: nothing is guessed for a number without one."
* insert Published
* insert Observed
* code from $vsRatio (extensible)
* value[x] only Quantity
* valueQuantity from $vsRatioUnit (extensible)

Profile: AcceptedGestationalAge
Parent: Observation
Id: accepted-gestational-age
Title: "Gestational age as it is read"
Description: "Completed weeks, weeks with a decimal, or days, at the time of the observation."
* insert Published
* insert Observed
* code from $vsAge (extensible)
* value[x] only Quantity
* valueQuantity from $vsAgeUnit (extensible)

Profile: AcceptedSymptom
Parent: Observation
Id: accepted-symptom
Title: "Symptom or sign as it is read"
Description: "The symptom as code with a yes or no (boolean or coded), or a code that asks for symptoms with the symptom as value."
* insert Published
* insert Observed
* code from $vsSymptom (preferred)
* value[x] only boolean or CodeableConcept or string

Profile: AcceptedLaboratoryResult
Parent: Observation
Id: accepted-laboratory-result
Title: "Laboratory or bedside value as it is read"
Description: "A number with its unit in UCUM; a comparator such as < is honoured."
* insert Published
* insert Observed
* code from $vsLaboratory (extensible)
* value[x] only Quantity
* valueQuantity.system = "http://unitsofmeasure.org"
