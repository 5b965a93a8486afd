package fhirserver;

import ca.uhn.fhir.interceptor.api.Hook;
import ca.uhn.fhir.interceptor.api.Interceptor;
import ca.uhn.fhir.interceptor.api.Pointcut;
import jakarta.servlet.http.HttpServletRequest;
import ca.uhn.fhir.rest.server.exceptions.AuthenticationException;

/** Lets nobody in without the one token there is. */
@Interceptor
public final class BearerToken {
  private final String expected;

  BearerToken(String token) {
    this.expected = "Bearer " + token;
  }

  @Hook(Pointcut.SERVER_INCOMING_REQUEST_PRE_HANDLER_SELECTED)
  public void check(HttpServletRequest request) {
    if (!expected.equals(request.getHeader("Authorization"))) throw new AuthenticationException("token");
  }
}
