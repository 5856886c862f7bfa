package org.collarbook.schedule;

import java.io.OutputStream;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.collarbook.platform.Caution;
import org.collarbook.platform.paper.Sheet;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.collarbook.schedule.packet.PacketTables;
import org.collarbook.schedule.packet.PacketWords;
import org.jspecify.annotations.Nullable;

/** What falls due in a month, on paper: by site, a row for each line, and each rule with its citation once. */
final class SchedulePdf {

    private static final String CAUTION = "From recorded facts; it sees no dent. Follow local codes and the authority"
            + " having jurisdiction. Unknown is do-not-fill.";

    private final MonthOnPaper.About about;
    private final List<String> asked;
    private final Instant moment;
    private final RuleBook book;
    private final List<ScheduleRow> lines;
    private final PacketTables tables;
    /** The number by which the rows name a rule. */
    private final Map<String, Integer> rules = new LinkedHashMap<>();

    private SchedulePdf(MonthOnPaper.About about, List<String> asked, Instant moment, RuleBook book,
            List<ScheduleRow> lines, PacketTables tables) {
        this.about = about;
        this.asked = asked;
        this.moment = moment;
        this.book = book;
        this.lines = lines;
        this.tables = tables;
        lines.stream().map(ScheduleRow::rule).filter(Objects::nonNull).sorted().distinct()
                .forEach(rule -> rules.put(rule, rules.size() + 1));
    }

    /** The stream is left open. */
    static void write(MonthOnPaper.About about, List<String> asked, Instant moment, RuleBook book,
            List<ScheduleRow> lines,
            OutputStream out) {
        var title = "Requalification schedule, " + about.month();
        try (var sheet = Sheet.open(out, title + ", " + PacketWords.moment(moment), null, CAUTION,
                moment.atZone(ZoneOffset.UTC))) {
            new SchedulePdf(about, asked, moment, book, lines, new PacketTables(sheet)).write();
        }
    }

    private void write() {
        var month = about.month();
        tables.title("Due in " + month.getMonth().getDisplayName(TextStyle.FULL, Locale.US) + " " + month.getYear(),
                "Requalification schedule. What is due in a month may be met through its last day, "
                        + month.atEndOfMonth() + ".");
        glance();
        tables.words(Caution.TEXT);
        var bySite = new LinkedHashMap<String, List<ScheduleRow>>();
        lines.forEach(line -> bySite.computeIfAbsent(site(line), _ -> new ArrayList<>()).add(line));
        bySite.forEach(this::site);
        if (!rules.isEmpty()) {
            citations();
        }
        tables.leftOut();
    }

    private void glance() {
        long containers = lines.stream().map(ScheduleRow::containerId).distinct().count();
        var facts = tables.facts("At a glance")
                .strong("Fall due", lines.size() + (lines.size() == 1 ? " requirement" : " requirements") + " of "
                        + containers + (containers == 1 ? " container" : " containers"))
                .line("Status",
                        lines.isEmpty()
                                ? "nothing falls due"
                                : counted(lines, line -> " " + PacketWords.plain(line.status())))
                .line("Sizes",
                        lines.isEmpty() ? PacketWords.plain(List.of()) : counted(lines, line -> " × " + line.size()))
                .line("Asked for", asked.isEmpty() ? "the whole register" : String.join("; ", asked))
                .line("Snapshot taken", PacketWords.moment(moment) + ", by key " + about.madeBy());
        var replay = about.replay();
        facts.line("Status as of", replay == null || replay.asOf() == null ? "the date at each site" : replay.asOf());
        if (replay != null) {
            facts.line("As known at", PacketWords.moment(replay.knownAt()));
        }
        facts.hash("Rule book", book.hash())
                .line("Not on it", "what has no known month: see the list of what is undetermined").end();
    }

    private static String counted(List<ScheduleRow> lines, Function<ScheduleRow, String> by) {
        return lines.stream().collect(Collectors.groupingBy(by, TreeMap::new, Collectors.counting())).entrySet()
                .stream()
                .map(entry -> entry.getValue() + entry.getKey()).collect(Collectors.joining(", "));
    }

    private static String site(ScheduleRow line) {
        return line.site() == null
                ? "No recorded place"
                : line.site() + (line.site().equals(line.siteName()) ? "" : ", " + line.siteName());
    }

    private void site(String name, List<ScheduleRow> here) {
        var table = tables.columns(name + ": " + here.size(), new float[]{216, 110, 96, 34, 84}, "Container",
                "What is due", "Status", "Rule", "Done on, by");
        here.forEach(line -> table.row(container(line), PacketWords.plain(line.requirement())
                + (line.jurisdiction() == null ? "" : ", " + line.jurisdiction()), line.status().replace('_', ' '),
                number(line.rule()), ""));
        table.end();
    }

    private String number(@Nullable String rule) {
        return rule == null ? "" : "[" + rules.get(rule) + "]";
    }

    private static String container(ScheduleRow line) {
        return line.serial() + "\n" + line.specification() + ", " + line.size() + ", maker "
                + PacketWords.known(line.maker()) + ", made " + PacketWords.known(line.manufacturedIn())
                + (line.tag() == null ? "" : "\ntag " + line.tag());
    }

    /**
     * In full, once each. Where a rule has said different things, each of them that had begun by then: an older one may
     * be asked by the day of the last test. What must be switched on, or asked for, is in the answer of the container.
     */
    private void citations() {
        var today = about.replay() == null || about.replay().asOf() == null
                ? LocalDate.ofInstant(moment, ZoneOffset.UTC)
                : about.replay().asOf();
        var table = tables.columns("Rules, with the edition that was read", new float[]{34, 176, 330}, "No.", "Rule",
                "Citation");
        rules.forEach((id, number) -> {
            var rule = book.rules().stream().filter(one -> one.id().equals(id)).findFirst();
            table.row("[" + number + "]", id + rule.map(one -> "\n" + one.title()).orElse(""),
                    rule.map(one -> cited(one, today)).orElse("not in the rule book that is loaded"));
        });
        table.end();
    }

    private static String cited(RuleInfo rule, LocalDate today) {
        return rule.values().stream()
                .filter(value -> !value.from().isAfter(today) && value.policy() == null && value.onByDefault())
                .map(value -> "from " + value.from() + ": " + PacketWords.cited(value.citation()))
                .collect(Collectors.joining("\n"));
    }
}
