// What we return. Every resource names the rule set it comes from in meta.source: PlanDefinition|version#fingerprint.
Alias: $vsCondition = https://pregnancy-htn.example/fhir/ValueSet/suggested-condition
Alias: $vsReferral = https://pregnancy-htn.example/fhir/ValueSet/suggested-referral
Alias: $vsSafety = https://pregnancy-htn.example/fhir/ValueSet/safety-issue
Alias: $verification = http://terminology.hl7.org/CodeSystem/condition-ver-status
Alias: $clinical = http://terminology.hl7.org/CodeSystem/condition-clinical

RuleSet: Traceable
* meta 1..1
* meta.source 1..1
* meta.source ^short = "Rule set: PlanDefinition, version and fingerprint of its data"

Profile: HypertensionGuidance
Parent: GuidanceResponse
Id: hypertension-guidance
Title: "Answer about one woman"
Description: "The assessment as output parameters, what is missing as data requirements, and the account of every entry received."
* insert Published
* insert Traceable
* module[x] only canonical
* occurrenceDateTime 1..1
* note 1..*
* evaluationMessage 1..*
* outputParameters 1..1
* contained 1..*

Profile: ProvisionalCondition
Parent: Condition
Id: provisional-condition
Title: "Suggested Condition"
Description: "A class of the answer, proposed for the problem list: provisional until a clinician confirms it."
* insert Published
* insert Traceable
* clinicalStatus 1..1
* clinicalStatus = $clinical#active
* verificationStatus 1..1
* verificationStatus = $verification#provisional
* category 1..*
* code 1..1
* code from $vsCondition (extensible)
* recordedDate 1..1
* note 1..*

Profile: ReferralProposal
Parent: ServiceRequest
Id: referral-proposal
Title: "Proposed referral"
Description: "A draft with reason, findings and the steps before transfer; nothing is ordered by it."
* insert Published
* insert Traceable
* status = #draft
* intent = #proposal
* priority 1..1
* code 1..1
* code from $vsReferral (extensible)
* occurrence[x] 1..1
* authoredOn 1..1

Profile: SafetyIssue
Parent: DetectedIssue
Id: safety-issue
Title: "Medicine or measurement in doubt"
Description: "A medicine to avoid or use with care, or a doubt about how a value was measured."
* insert Published
* insert Traceable
* code 1..1
* code from $vsSafety (required)
* severity 1..1
* identified[x] 1..1
* detail 1..1

Profile: RiskEstimate
Parent: RiskAssessment
Id: risk-estimate
Title: "Figure of a published risk model"
Description: "A figure about groups, never a reassurance; its inputs are named, and its note says what was not verified."
* insert Published
* insert Traceable
* method 1..1
* prediction 1..*
* note 1..*

Profile: HypertensionMeasureReport
Parent: MeasureReport
Id: hypertension-measure-report
Title: "Result of a quality measure"
Description: "Counts under a named guideline; a score only where the denominator is not empty."
* insert Published
* insert Traceable
* date 1..1
* improvementNotation 1..1

Profile: AnswerProvenance
Parent: Provenance
Id: answer-provenance
Title: "Where an answer comes from"
Description: "Targets are the resources of the answer; entities are the rule set with its fingerprint and the data used."
* insert Published
* insert Traceable
* entity 1..*
