package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;

import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

import org.junit.jupiter.api.Test;

class SecretTests {

    /**
     * The vector of the reference libraries of Standard Webhooks (github.com/standard-webhooks/standard-webhooks,
     * libraries, "sign function works"); the scheme is spec/standard-webhooks.md 1.0.0, "Signature scheme".
     */
    @Test
    void signsAsTheReferenceLibrariesDo() {
        var secret = new Secret(Base64.getDecoder().decode("MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw"));
        assertThat(secret.text()).isEqualTo("whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw");
        assertThat(secret.sign("msg_p5jXN8AQM9LWM0D4loKWxJek", 1614265330L,
                "{\"test\": 2432232314}".getBytes(StandardCharsets.UTF_8)))
                .isEqualTo("v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=");
    }

    /** "Random. At least 24 bytes (192 bits, 512 maximum)", the same section. */
    @Test
    void aSecretIsRandomLongEnoughAndNotPrinted() {
        var texts = new HashSet<String>();
        for (int i = 0; i < 100; i++) {
            var secret = Secret.generate();
            assertThat(secret.bytes().length).isBetween(24, 64);
            assertThat(secret.toString()).doesNotContain(secret.text().substring(6));
            texts.add(secret.text());
        }
        assertThat(texts).hasSize(100);
    }

    /** "a space delimited list of signatures", the section on headers. */
    @Test
    void severalSecretsSignSideBySide() {
        var one = Secret.generate();
        var other = Secret.generate();
        var id = UUID.randomUUID();
        var body = new byte[]{'{', '}'};
        assertThat(Secret.signatures(List.of(one, other), id, 7, body))
                .isEqualTo(one.sign(id.toString(), 7, body) + " " + other.sign(id.toString(), 7, body));
    }

    /** The worked example of the conventions, by the JDK alone. */
    @Test
    void theExampleOfTheConventionsHolds() throws Exception {
        var lines = Files.readString(Path.of("api/conventions.md"));
        var mac = Mac.getInstance("HmacSHA256");
        mac.init(new SecretKeySpec(Base64.getDecoder().decode(said(lines, "secret").substring(6)), "HmacSHA256"));
        var signed = mac.doFinal((said(lines, "webhook-id") + "." + said(lines, "webhook-timestamp") + "."
                + said(lines, "body")).getBytes(StandardCharsets.UTF_8));
        assertThat(said(lines, "webhook-signature")).isEqualTo("v1," + Base64.getEncoder().encodeToString(signed));
    }

    private static String said(String conventions, String name) {
        var line = Pattern.compile("^    " + name + "  +(\\S.*)$", Pattern.MULTILINE).matcher(conventions);
        assertThat(line.find()).as(name).isTrue();
        return line.group(1);
    }
}
