// Operations and what the server can do.
Instance: assess-hypertension
InstanceOf: OperationDefinition
Usage: #definition
* url = "https://pregnancy-htn.example/fhir/OperationDefinition/assess-hypertension"
* version = "1.0.0"
* name = "AssessHypertension"
* title = "Assess hypertension in pregnancy"
* status = #active
* experimental = false
* date = "2026-11-25"
* publisher = "pregnancy-htn"
* kind = #operation
* affectsState = false
* description = "Judges the data of one woman, or of several, against a guideline. The body is a Bundle, or Parameters with it. The result is a collection Bundle: for each woman a GuidanceResponse with its output parameters contained, suggested Conditions, the proposed referral, an OperationOutcome that accounts for every entry received, and Provenance."
* code = #assess-hypertension
* system = true
* type = false
* instance = false
* parameter[0].name = #bundle
* parameter[=].use = #in
* parameter[=].min = 1
* parameter[=].max = "1"
* parameter[=].documentation = "The data: a Bundle of any type."
* parameter[=].type = #Bundle
* parameter[+].name = #guideline
* parameter[=].use = #in
* parameter[=].min = 0
* parameter[=].max = "1"
* parameter[=].documentation = "Id of the guideline; `all`: under the default one, with every other side by side."
* parameter[=].type = #string
* parameter[+].name = #asOf
* parameter[=].use = #in
* parameter[=].min = 0
* parameter[=].max = "1"
* parameter[=].documentation = "Judge as at this time; absent: now."
* parameter[=].type = #dateTime
* parameter[+].name = #subject
* parameter[=].use = #in
* parameter[=].min = 0
* parameter[=].max = "1"
* parameter[=].documentation = "The woman, when the data hold several."
* parameter[=].type = #Reference
* parameter[=].targetProfile = "http://hl7.org/fhir/StructureDefinition/Patient"
* parameter[+].name = #riskModels
* parameter[=].use = #in
* parameter[=].min = 0
* parameter[=].max = "1"
* parameter[=].documentation = "Add the figures of two published risk equations as RiskAssessments; absent: no. They are unverified and decide nothing."
* parameter[=].type = #boolean
* parameter[+].name = #return
* parameter[=].use = #out
* parameter[=].min = 1
* parameter[=].max = "1"
* parameter[=].documentation = "The collection Bundle, bare."
* parameter[=].type = #Bundle

Instance: pregnancy-htn
InstanceOf: CapabilityStatement
Usage: #definition
* url = "https://pregnancy-htn.example/fhir/CapabilityStatement/pregnancy-htn"
* version = "1.0.0"
* name = "PregnancyHypertension"
* title = "Decision support for hypertension in pregnancy"
* status = #active
* experimental = false
* date = "2026-11-25"
* publisher = "pregnancy-htn"
* description = "A stateless service: it keeps nothing, so that create, update, delete and search of clinical resources do not exist here."
* kind = #instance
* software.name = "pregnancy-htn"
* software.version = "0.1.0"
* implementation.description = "Answers are judged from what is sent with each request."
* fhirVersion = #4.0.1
* format[0] = #application/fhir+json
* format[+] = #json
* rest.mode = #server
* rest.security.cors = true
* rest.security.description = "Authentication is the task of the site's gateway; the service holds no data of its own."
* rest.operation[0].name = "assess-hypertension"
* rest.operation[=].definition = "https://pregnancy-htn.example/fhir/OperationDefinition/assess-hypertension"
* rest.resource[0].type = #ActivityDefinition
* rest.resource[=].interaction[0].code = #read
* rest.resource[=].interaction[+].code = #search-type
* rest.resource[=].searchParam[0].name = "_id"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[=].searchParam[+].name = "url"
* rest.resource[=].searchParam[=].type = #uri
* rest.resource[=].searchParam[+].name = "name"
* rest.resource[=].searchParam[=].type = #string
* rest.resource[=].searchParam[+].name = "version"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[+].type = #Bundle
* rest.resource[=].operation[0].name = "validate"
* rest.resource[=].operation[=].definition = "http://hl7.org/fhir/OperationDefinition/Resource-validate"
* rest.resource[+].type = #CapabilityStatement
* rest.resource[=].interaction[0].code = #read
* rest.resource[=].interaction[+].code = #search-type
* rest.resource[=].searchParam[0].name = "_id"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[=].searchParam[+].name = "url"
* rest.resource[=].searchParam[=].type = #uri
* rest.resource[=].searchParam[+].name = "name"
* rest.resource[=].searchParam[=].type = #string
* rest.resource[=].searchParam[+].name = "version"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[+].type = #CodeSystem
* rest.resource[=].interaction[0].code = #read
* rest.resource[=].interaction[+].code = #search-type
* rest.resource[=].searchParam[0].name = "_id"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[=].searchParam[+].name = "url"
* rest.resource[=].searchParam[=].type = #uri
* rest.resource[=].searchParam[+].name = "name"
* rest.resource[=].searchParam[=].type = #string
* rest.resource[=].searchParam[+].name = "version"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[+].type = #ConceptMap
* rest.resource[=].interaction[0].code = #read
* rest.resource[=].interaction[+].code = #search-type
* rest.resource[=].searchParam[0].name = "_id"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[=].searchParam[+].name = "url"
* rest.resource[=].searchParam[=].type = #uri
* rest.resource[=].searchParam[+].name = "name"
* rest.resource[=].searchParam[=].type = #string
* rest.resource[=].searchParam[+].name = "version"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[+].type = #Library
* rest.resource[=].interaction[0].code = #read
* rest.resource[=].interaction[+].code = #search-type
* rest.resource[=].searchParam[0].name = "_id"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[=].searchParam[+].name = "url"
* rest.resource[=].searchParam[=].type = #uri
* rest.resource[=].searchParam[+].name = "name"
* rest.resource[=].searchParam[=].type = #string
* rest.resource[=].searchParam[+].name = "version"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[+].type = #Measure
* rest.resource[=].interaction[0].code = #read
* rest.resource[=].interaction[+].code = #search-type
* rest.resource[=].searchParam[0].name = "_id"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[=].searchParam[+].name = "url"
* rest.resource[=].searchParam[=].type = #uri
* rest.resource[=].searchParam[+].name = "name"
* rest.resource[=].searchParam[=].type = #string
* rest.resource[=].searchParam[+].name = "version"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[=].operation[0].name = "evaluate-measure"
* rest.resource[=].operation[=].definition = "http://hl7.org/fhir/OperationDefinition/Measure-evaluate-measure"
* rest.resource[+].type = #OperationDefinition
* rest.resource[=].interaction[0].code = #read
* rest.resource[=].interaction[+].code = #search-type
* rest.resource[=].searchParam[0].name = "_id"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[=].searchParam[+].name = "url"
* rest.resource[=].searchParam[=].type = #uri
* rest.resource[=].searchParam[+].name = "name"
* rest.resource[=].searchParam[=].type = #string
* rest.resource[=].searchParam[+].name = "version"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[+].type = #PlanDefinition
* rest.resource[=].interaction[0].code = #read
* rest.resource[=].interaction[+].code = #search-type
* rest.resource[=].searchParam[0].name = "_id"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[=].searchParam[+].name = "url"
* rest.resource[=].searchParam[=].type = #uri
* rest.resource[=].searchParam[+].name = "name"
* rest.resource[=].searchParam[=].type = #string
* rest.resource[=].searchParam[+].name = "version"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[=].operation[0].name = "apply"
* rest.resource[=].operation[=].definition = "http://hl7.org/fhir/OperationDefinition/PlanDefinition-apply"
* rest.resource[+].type = #StructureDefinition
* rest.resource[=].interaction[0].code = #read
* rest.resource[=].interaction[+].code = #search-type
* rest.resource[=].searchParam[0].name = "_id"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[=].searchParam[+].name = "url"
* rest.resource[=].searchParam[=].type = #uri
* rest.resource[=].searchParam[+].name = "name"
* rest.resource[=].searchParam[=].type = #string
* rest.resource[=].searchParam[+].name = "version"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[+].type = #ValueSet
* rest.resource[=].interaction[0].code = #read
* rest.resource[=].interaction[+].code = #search-type
* rest.resource[=].searchParam[0].name = "_id"
* rest.resource[=].searchParam[=].type = #token
* rest.resource[=].searchParam[+].name = "url"
* rest.resource[=].searchParam[=].type = #uri
* rest.resource[=].searchParam[+].name = "name"
* rest.resource[=].searchParam[=].type = #string
* rest.resource[=].searchParam[+].name = "version"
* rest.resource[=].searchParam[=].type = #token
