package org.collarbook.portal.notices;

import java.io.IOException;
import java.net.SocketTimeoutException;
import java.net.URI;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

import org.apache.hc.client5.http.DnsResolver;
import org.apache.hc.client5.http.SystemDefaultDnsResolver;
import org.apache.hc.client5.http.classic.methods.HttpPost;
import org.apache.hc.client5.http.config.ConnectionConfig;
import org.apache.hc.client5.http.config.RequestConfig;
import org.apache.hc.client5.http.impl.DefaultSchemePortResolver;
import org.apache.hc.client5.http.impl.classic.CloseableHttpClient;
import org.apache.hc.client5.http.impl.classic.HttpClientBuilder;
import org.apache.hc.client5.http.impl.io.PoolingHttpClientConnectionManagerBuilder;
import org.apache.hc.client5.http.impl.routing.DefaultRoutePlanner;
import org.apache.hc.core5.http.ClassicHttpResponse;
import org.apache.hc.core5.http.ContentType;
import org.apache.hc.core5.http.HttpHeaders;
import org.apache.hc.core5.http.HttpResponse;
import org.apache.hc.core5.http.io.entity.ByteArrayEntity;
import org.apache.hc.core5.io.Closer;
import org.apache.hc.core5.util.Timeout;
import org.collarbook.portal.notices.Attempt.Outcome;
import org.collarbook.portal.notices.CheckedResolver.AddressRefused;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.stereotype.Component;

/**
 * Sends one request and tells what came of it; never throws for what an endpoint does. No redirect is followed, nothing
 * tried twice, no cookie kept, no proxy asked; each request has a connection of its own, so its address is checked each
 * time.
 */
@Component
class SendNotice implements DisposableBean {

    private static final Duration DEADLINE = Duration.ofSeconds(15);
    private static final Duration CONNECT = Duration.ofSeconds(5);
    private static final int AT_ONCE = 256;
    /** What is read of an answer before the connection is closed on it. */
    private static final int MOST_READ = 8192;
    private static final int LONGEST_ERROR = 200;

    private final CloseableHttpClient client;
    private final Duration deadline;
    private final ScheduledExecutorService deadlines = Executors
            .newSingleThreadScheduledExecutor(Thread.ofPlatform().daemon().name("notice-deadlines").factory());

    @Autowired
    SendNotice(AllowedAddresses addresses) {
        this(addresses, SystemDefaultDnsResolver.INSTANCE, DEADLINE);
    }

    SendNotice(AllowedAddresses addresses, DnsResolver resolver, Duration deadline) {
        this.deadline = deadline;
        var connect = Timeout.of(deadline.compareTo(CONNECT) < 0 ? deadline : CONNECT);
        var connections = PoolingHttpClientConnectionManagerBuilder.create()
                .setDnsResolver(new CheckedResolver(resolver, addresses))
                .setMaxConnTotal(AT_ONCE).setMaxConnPerRoute(AT_ONCE)
                .setDefaultConnectionConfig(ConnectionConfig.custom().setConnectTimeout(connect).build()).build();
        this.client = HttpClientBuilder.create().setConnectionManager(connections)
                .setRoutePlanner(new DefaultRoutePlanner(DefaultSchemePortResolver.INSTANCE))
                .setConnectionReuseStrategy((request, response, context) -> false)
                .setDefaultRequestConfig(RequestConfig.custom().setResponseTimeout(Timeout.of(deadline))
                        .setConnectionRequestTimeout(Timeout.of(deadline)).build())
                .setUserAgent("Collarbook-Notices/1").disableRedirectHandling().disableAutomaticRetries()
                .disableCookieManagement().disableAuthCaching().disableContentCompression().build();
    }

    Attempt send(URI url, Map<String, String> headers, byte[] body) {
        var request = new HttpPost(url);
        headers.forEach(request::setHeader);
        request.setEntity(new ByteArrayEntity(body, ContentType.APPLICATION_JSON));
        var late = new AtomicBoolean();
        long start = System.nanoTime();
        // a timeout of the socket begins anew with every byte
        var stop = deadlines.schedule(() -> {
            late.set(true);
            request.cancel();
        }, deadline.toMillis(), TimeUnit.MILLISECONDS);
        try {
            var answer = answer(request);
            return new Attempt(Attempt.of(answer.getCode()), answer.getCode(), tookMs(start), null,
                    ComeAgain.read(answer.getCode(), answer.getFirstHeader(HttpHeaders.RETRY_AFTER)));
        } catch (IOException failed) {
            return new Attempt(outcome(failed, late.get()), null, tookMs(start), words(failed), null);
        } finally {
            stop.cancel(false);
        }
    }

    /**
     * The head decides, whatever comes of the body. Of that a bound is read, since some endpoints take it for a fault
     * when nobody reads; the rest is cut off, for closing it would read to its end.
     */
    private HttpResponse answer(HttpPost request) throws IOException {
        ClassicHttpResponse response = client.executeOpen(null, request, null);
        try {
            var entity = response.getEntity();
            if (entity != null) {
                entity.getContent().readNBytes(MOST_READ);
            }
        } catch (IOException ofTheBody) {
            // the status was told
        } finally {
            request.cancel();
            Closer.closeQuietly(response);
        }
        return response;
    }

    private static Outcome outcome(IOException failed, boolean late) {
        return late || failed instanceof SocketTimeoutException
                ? Outcome.TIMED_OUT
                : failed instanceof AddressRefused ? Outcome.ADDRESS_REFUSED : Outcome.NOT_REACHED;
    }

    private static int tookMs(long start) {
        return (int) TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - start);
    }

    private static String words(IOException failed) {
        var text = failed instanceof AddressRefused
                ? String.valueOf(failed.getMessage())
                : failed.getClass().getSimpleName() + ": " + failed.getMessage();
        return text.length() <= LONGEST_ERROR ? text : text.substring(0, LONGEST_ERROR);
    }

    @Override
    public void destroy() throws IOException {
        deadlines.shutdownNow();
        client.close();
    }
}
