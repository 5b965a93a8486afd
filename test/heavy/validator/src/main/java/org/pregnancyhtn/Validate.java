package org.pregnancyhtn;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import ca.uhn.fhir.validation.SingleValidationMessage;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.PrePopulatedValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.SnapshotGeneratingValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.UnknownCodeSystemWarningValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.instance.model.api.IBaseResource;

/**
 * Validates every FHIR resource found in JSON files, offline: conformance resources, requests, answers, cards.
 *
 * <p>Arguments: folders of our conformance resources, joined by commas; file that explains warnings; files and folders to look through.
 * Exit code 0 only when there is no error and no warning whose kind is not explained.
 */
public final class Validate {
  private static final Pattern EXPLAINED = Pattern.compile("^- `([^`]+)`: .+$");

  private final ObjectMapper json = new ObjectMapper();
  private final Set<String> explained;
  private final FhirValidator validator;
  private final Map<String, Integer> warnings = new TreeMap<>();
  private final Map<String, String> examples = new TreeMap<>();
  private int resources;
  private int errors;

  private Validate(List<String> conformance, Path explanations) throws IOException {
    explained = readExplained(explanations);
    validator = buildValidator(conformance);
  }

  public static void main(String[] arguments) throws IOException {
    Validate run = new Validate(List.of(arguments[0].split(",")), Path.of(arguments[1]));
    jsonFiles(List.of(arguments).subList(2, arguments.length)).parallelStream().forEach(run::validateFile);
    System.exit(run.report() ? 0 : 1);
  }

  private static Set<String> readExplained(Path file) throws IOException {
    Set<String> kinds = new TreeSet<>();
    for (String line : Files.readAllLines(file)) {
      Matcher found = EXPLAINED.matcher(line);
      if (found.matches()) kinds.add(found.group(1));
    }
    return kinds;
  }

  private static List<Path> jsonFiles(List<String> roots) throws IOException {
    List<Path> files = new ArrayList<>();
    for (String root : roots) {
      try (Stream<Path> found = Files.walk(Path.of(root))) {
        files.addAll(
            found.filter(path -> path.toString().endsWith(".json")).sorted().collect(Collectors.toList()));
      }
    }
    return files;
  }

  private FhirValidator buildValidator(List<String> conformance) throws IOException {
    FhirContext context = FhirContext.forR4();
    PrePopulatedValidationSupport ours = new PrePopulatedValidationSupport(context);
    for (Path file : jsonFiles(conformance)) {
      IBaseResource resource = context.newJsonParser().parseResource(Files.readString(file));
      ours.addResource(resource);
    }
    UnknownCodeSystemWarningValidationSupport unknown = new UnknownCodeSystemWarningValidationSupport(context);
    unknown.setNonExistentCodeSystemSeverity(
        ca.uhn.fhir.context.support.IValidationSupport.IssueSeverity.WARNING);
    ValidationSupportChain chain =
        new ValidationSupportChain(
            ours,
            new DefaultProfileValidationSupport(context),
            new CommonCodeSystemsTerminologyService(context),
            new InMemoryTerminologyServerValidationSupport(context),
            new SnapshotGeneratingValidationSupport(context),
            unknown);
    FhirInstanceValidator instance = new FhirInstanceValidator(chain);
    instance.setAnyExtensionsAllowed(false);
    instance.setNoTerminologyChecks(false);
    FhirValidator made = context.newValidator();
    made.registerValidatorModule(instance);
    return made;
  }

  private void validateFile(Path file) {
    try {
      walk(file, json.readTree(file.toFile()));
    } catch (IOException fault) {
      throw new UncheckedIOException(fault);
    }
  }

  /** Validates the outermost resources of any JSON: a file may be a resource, or hold some (cards, prefetch). */
  private void walk(Path file, JsonNode node) {
    if (node.isObject() && node.has("resourceType")) {
      validate(file, node);
    } else {
      for (JsonNode child : node) walk(file, child);
    }
  }

  private void validate(Path file, JsonNode resource) {
    record(file, validator.validateWithResult(resource.toString()).getMessages());
  }

  private synchronized void record(Path file, List<SingleValidationMessage> messages) {
    resources++;
    for (SingleValidationMessage message : messages) {
      ResultSeverityEnum severity = message.getSeverity();
      String line =
          file + " " + message.getLocationString() + " [" + message.getMessageId() + "] " + message.getMessage();
      if (severity == ResultSeverityEnum.ERROR || severity == ResultSeverityEnum.FATAL) {
        errors++;
        System.out.println("ERROR " + line);
      } else if (severity == ResultSeverityEnum.WARNING) {
        String kind = kindOf(message);
        warnings.merge(kind, 1, Integer::sum);
        examples.putIfAbsent(kind, line);
      }
    }
  }

  /** The message id; for messages that share one, or have none, the words without what varies. */
  private static String kindOf(SingleValidationMessage message) {
    String id = message.getMessageId();
    if (id != null && !id.startsWith("Terminology_PassThrough")) return id;
    return message.getMessage().replaceAll("'[^' ]*'", "_").replaceAll("https?://\\S+", "_").replace('`', '_');
  }

  private boolean report() {
    int unexplained = 0;
    for (Map.Entry<String, Integer> each : warnings.entrySet()) {
      boolean isExplained = explained.contains(each.getKey());
      if (!isExplained) unexplained++;
      String label = isExplained ? "explained warning " : "UNEXPLAINED warning ";
      System.out.println(label + each.getKey() + " x" + each.getValue());
      if (!isExplained) System.out.println("  such as: " + examples.get(each.getKey()));
    }
    System.out.println(
        resources + " resources validated, " + errors + " errors, " + unexplained + " unexplained kinds of warning");
    return resources > 0 && errors == 0 && unexplained == 0;
  }
}
