package org.collarbook.access;

import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * What whoever runs the service may set.
 *
 * @param issuer whose tokens are taken besides keys; of nobody when absent
 * @param audience what a token must be meant for
 * @param jwkSetUri where the issuer's keys are; asked of the issuer when absent
 * @param requestsPerMinute how much a caller of each role may ask; 0, or a role that is not named, is without a limit
 * @param calendarReadsPerMinute how often each calendar may be read by the token in its address; 0 is without a limit
 * @param invalidKeysPerMinute how often a client address may come with a key or token that opens nothing; 0 is without a
 *        limit
 * @param strangersNotedPerMinute how many requests without a valid key the access log takes; 0 is without a limit
 * @param corsOrigins pages of which other origins may ask; of none when absent
 */
@ConfigurationProperties("collarbook.access")
record AccessSettings(@Nullable String issuer, @DefaultValue("collarbook") String audience,
        @Nullable String jwkSetUri, @DefaultValue Map<Role, Long> requestsPerMinute,
        @DefaultValue("60") long calendarReadsPerMinute, @DefaultValue("600") long invalidKeysPerMinute,
        @DefaultValue("6000") long strangersNotedPerMinute,
        @DefaultValue List<String> corsOrigins) {

    AccessSettings {
        requestsPerMinute = Map.copyOf(requestsPerMinute);
        corsOrigins = List.copyOf(corsOrigins);
    }
}
