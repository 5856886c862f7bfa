package org.collarbook.platform.web;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.Duration;

import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ValveBase;
import org.apache.coyote.ActionCode;
import org.apache.tomcat.util.net.ApplicationBufferHandler;
import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;

import jakarta.servlet.ServletException;

/**
 * Of a body that nobody read to its end (a 401, say) what comes soon is taken in, so that the caller reads the answer and
 * may ask again; else the connection ends. The server itself would wait for the rest as long as a byte comes now and then.
 */
@Component
class RestOfBody extends ValveBase implements WebServerFactoryCustomizer<TomcatServletWebServerFactory> {

    private static final Duration SOON = Duration.ofMillis(500);
    private static final long NAP_MILLIS = 5;
    private static final int MOST = 2 * 1024 * 1024;

    RestOfBody() {
        super(true);
    }

    @Override
    public void customize(TomcatServletWebServerFactory factory) {
        factory.addEngineValves(this);
    }

    @Override
    public void invoke(Request request, Response response) throws IOException, ServletException {
        getNext().invoke(request, response);
        // who asked first whether to send a body does not send it after a refusal
        if (request.isAsync() || request.getHeader(HttpHeaders.EXPECT) != null) {
            return;
        }
        var connection = request.getCoyoteRequest();
        if (!connection.isFinished()) {
            response.finishResponse();
            if (!comes(connection)) {
                connection.action(ActionCode.DISABLE_SWALLOW_INPUT, null);
            }
        }
    }

    /** Read from the connection itself: whoever parsed the body may have closed the stream. */
    private static boolean comes(org.apache.coyote.Request connection) {
        long end = System.nanoTime() + SOON.toNanos();
        var waste = new Waste();
        int taken = 0;
        try {
            while (!connection.isFinished() && System.nanoTime() < end && taken <= MOST) {
                // a read would wait for the next byte as long as the server does
                connection.action(ActionCode.AVAILABLE, Boolean.TRUE);
                if (connection.getAvailable() == 0) {
                    Thread.sleep(NAP_MILLIS);
                    continue;
                }
                int more = connection.doRead(waste);
                if (more < 0) {
                    break;
                }
                taken += more;
            }
            return connection.isFinished();
        } catch (IOException gone) {
            return false;
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** Where the server puts what it read. */
    private static final class Waste implements ApplicationBufferHandler {

        private ByteBuffer bytes = EMPTY_BUFFER;

        @Override
        public void setByteBuffer(ByteBuffer read) {
            bytes = read;
        }

        @Override
        public ByteBuffer getByteBuffer() {
            return bytes;
        }

        @Override
        public void expand(int size) {
            // it is given whole buffers
        }
    }
}
