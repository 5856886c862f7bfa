package org.collarbook.access;

import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * What whoever runs the service may set.
 *
 * @param issuer whose tokens are taken besides keys; of nobody when absent
 * @param audience what a token must be meant for; required with an issuer
 * @param jwkSetUri where the issuer's keys are; asked of the issuer when absent
 */
@ConfigurationProperties("collarbook.access")
record AccessSettings(@Nullable String issuer, @DefaultValue("collarbook") String audience,
        @Nullable String jwkSetUri) {}
