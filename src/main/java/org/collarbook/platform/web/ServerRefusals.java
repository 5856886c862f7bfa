package org.collarbook.platform.web;

import java.io.IOException;

import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.core.StandardHost;
import org.apache.catalina.valves.ErrorReportValve;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.stereotype.Component;

/** What the server itself refuses (a malformed request line, a header too long) is a problem detail as well. */
@Component
class ServerRefusals implements WebServerFactoryCustomizer<TomcatServletWebServerFactory> {

    @Override
    public void customize(TomcatServletWebServerFactory factory) {
        factory.addContextCustomizers(context -> {
            if (context.getParent() instanceof StandardHost host) {
                host.setErrorReportValveClass(ProblemValve.class.getName());
            }
        });
    }

    /** Made by the server from its name. */
    public static class ProblemValve extends ErrorReportValve {

        @Override
        protected void report(Request request, Response response, @Nullable Throwable throwable) {
            if (response.getStatus() < 400 || response.getContentWritten() > 0 || !response.setErrorReported()) {
                return;
            }
            try {
                response.setContentType("application/problem+json");
                response.setCharacterEncoding("UTF-8");
                response.getReporter().write("""
                        {"type":"urn:problem-type:collarbook:refused-by-server","title":"Refused","status":%d,"code":"REFUSED_BY_SERVER",\
                        "detail":"The server could not read this request."}""".formatted(response.getStatus()));
                response.finishResponse();
            } catch (IOException | IllegalStateException gone) {
                // the caller has gone away: nobody is left to tell
            }
        }
    }
}
