package fhirserver;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.jpa.search.DatabaseBackedPagingProvider;
import ca.uhn.fhir.jpa.test.config.TestHSearchAddInConfig;
import ca.uhn.fhir.jpa.test.config.TestR4Config;
import ca.uhn.fhir.rest.server.RestfulServer;
import ca.uhn.fhir.rest.server.provider.ResourceProviderFactory;
import org.eclipse.jetty.ee10.servlet.ServletContextHandler;
import org.eclipse.jetty.ee10.servlet.ServletHolder;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;

/** HAPI FHIR R4 on 127.0.0.1. Argument: port. Wants the bearer token in the environment variable TOKEN. */
public final class Main {
  public static void main(String[] arguments) throws Exception {
    int port = Integer.parseInt(arguments[0]);
    var spring = new AnnotationConfigApplicationContext(TestR4Config.class, TestHSearchAddInConfig.NoFT.class);

    var fhir = new RestfulServer(spring.getBean(FhirContext.class));
    fhir.registerProviders(spring.getBean(ResourceProviderFactory.class).createProviders());
    fhir.registerProvider(spring.getBean("mySystemProviderR4"));
    fhir.setPagingProvider(spring.getBean(DatabaseBackedPagingProvider.class));
    fhir.registerInterceptor(new BearerToken(System.getenv("TOKEN")));

    var server = new Server();
    var connector = new ServerConnector(server);
    connector.setHost("127.0.0.1");
    connector.setPort(port);
    server.addConnector(connector);
    var context = new ServletContextHandler("/");
    context.addServlet(new ServletHolder(fhir), "/fhir/*");
    server.setHandler(context);
    server.start();
    System.out.println("listening on " + connector.getLocalPort());
    server.join();
  }
}
