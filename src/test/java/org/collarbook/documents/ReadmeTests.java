package org.collarbook.documents;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;

/** Runs the README's session with the shell and curl, as a reader would, on an empty register of its own. */
@RegisterTest
@TestPropertySource(properties = "spring.application.name=collarbook-readme")
class ReadmeTests {

    private static final Path README = Path.of("README.md");

    private final Api api;
    private final JdbcClient jdbc;

    ReadmeTests(Api api, JdbcClient jdbc) {
        this.api = api;
        this.jdbc = jdbc;
    }

    @Test
    void theSessionAnswersAsShown() throws Exception {
        var blocks = ConsoleBlock.in(Files.readAllLines(README));
        assertThat(blocks).hasSizeGreaterThan(7);
        var wrong = new ArrayList<String>();
        var session = Files.createTempDirectory(Path.of("target"), "readme");
        for (var block : blocks) {
            if (!block.command().startsWith("mvn ") && !block.command().startsWith("export KEY")) {
                var answered = run(session, block.command());
                for (var difference : Shown.differences(block.shown(), answered)) {
                    wrong.add("README.md:" + block.line() + " " + difference);
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    private String run(Path session, String command) throws Exception {
        var shell = new ProcessBuilder("bash", "-c", command.replace("http://localhost:8080", api.baseUrl()))
                .directory(session.toFile()).redirectErrorStream(true);
        shell.environment().put("KEY", api.keyOf(Role.ADMINISTRATOR));
        shell.environment().put("CUSTOMER", customer());
        shell.environment().put("ID", container());
        shell.environment().put("HOLD", latest("/holds"));
        shell.environment().put("TEST", latest("/requalifications"));
        shell.environment().put("IMPORT", latestImport());
        shell.environment().put("SITE", site("S-005"));
        shell.environment().put("TRUCK", site("V-02"));
        var process = shell.start();
        var answered = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(5, TimeUnit.MINUTES)).isTrue();
        return answered;
    }

    /** What the reader has copied from an answer. */
    private String customer() {
        var first = api.as(Role.CLERK).get("/api/customers?size=1").at("/items/0/id");
        return first.asString("");
    }

    private String latest(String what) {
        return api.as(Role.CLERK).get("/api/containers/" + container() + what).at("/items/0/id").asString("");
    }

    private String site(String code) {
        return api.as(Role.CLERK).get("/api/sites?size=1000").at("/items").valueStream()
                .filter(site -> site.at("/code").asString().equals(code)).map(site -> site.at("/id").asString())
                .findFirst().orElse("");
    }

    private String latestImport() {
        return jdbc.sql("select import_id::text from ledger_pass order by number desc limit 1").query(String.class)
                .optional().orElse("");
    }

    private String container() {
        return api.as(Role.CLERK).get("/api/containers?tag=CB-00000013").at("/items/0/id").asString("");
    }

    @Test
    void opensWithTheJobInOneParagraphAndTellsTheCautions() throws Exception {
        var lines = Files.readAllLines(README);
        assertThat(lines.get(0)).isEqualTo("# Collarbook");
        assertThat(lines.get(2)).startsWith("Collarbook is the register of");
        assertThat(String.join(" ", lines)).contains("Look at the container before every fill",
                "authority having jurisdiction", "unknown as do-not-fill");
    }

    @Test
    void linksLeadSomewhere() throws Exception {
        for (var document : List.of(README, Path.of("DEVELOPERS.md"), Path.of("api/conventions.md"))) {
            var links = java.util.regex.Pattern.compile("\\]\\((?!http)([^)#]+)").matcher(Files.readString(document));
            while (links.find()) {
                assertThat(document.resolveSibling(links.group(1))).as("link in %s", document).exists();
            }
        }
    }
}
