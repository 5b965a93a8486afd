Alias: $loinc = http://loinc.org
Alias: $ucum = http://unitsofmeasure.org

Profile: AcceptedBloodPressure
Parent: Observation
Id: accepted-blood-pressure
Title: "Blood pressure as it is read"
Description: "One reading: systolic and diastolic as components, or one of them. Two stand-alone observations, members of a panel and other shapes are read too; this is the shape to send."
* status from usable-observation-status (required)
* code from blood-pressure-panel (extensible)
* subject 1..1
* effective[x] 1..1
* effective[x] only dateTime or Period or instant
* component ^slicing.discriminator.type = #pattern
* component ^slicing.discriminator.path = "code"
* component ^slicing.rules = #open
* component contains systolic 0..1 and diastolic 0..1
* component[systolic].code = $loinc#8480-6
* component[systolic].value[x] only Quantity
* component[systolic].valueQuantity from pressure-unit (required)
* component[diastolic].code = $loinc#8462-4
* component[diastolic].value[x] only Quantity
* component[diastolic].valueQuantity from pressure-unit (required)
