package org.collarbook.dispatch.lists;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.apache.commons.csv.CSVFormat;
import org.collarbook.dispatch.lists.PullList.Disputed;
import org.collarbook.dispatch.lists.PullList.Pulled;
import org.collarbook.dispatch.lists.PullList.Stop;
import org.collarbook.dispatch.lists.PullList.ToLookInto;
import org.collarbook.platform.SpreadsheetText;
import org.jspecify.annotations.Nullable;

/**
 * A list as a table: a row for each container, its stop first. One whose due month cannot be told is a row too, with
 * {@code LOOK_INTO} as what is to be done and what is missing in place of the reason; so is one whose place is disputed,
 * at each stop that claims it.
 */
final class PullListCsv {

    /** One container as a row. */
    private record Row(Stop stop, @Nullable Pulled pulled, @Nullable ToLookInto unknown, @Nullable Disputed disputed) {

        @Nullable
        Object of(Function<Pulled, @Nullable Object> listed, Function<ToLookInto, @Nullable Object> lookedInto,
                Function<Disputed, @Nullable Object> claimed) {
            if (pulled != null) {
                return listed.apply(pulled);
            }
            return unknown != null ? lookedInto.apply(unknown) : disputed == null ? null : claimed.apply(disputed);
        }
    }

    private enum Column {
        ROUTE(row -> row.stop.route()),
        POSITION(row -> row.stop.position()),
        SITE(row -> row.stop.site().code()),
        SITE_NAME(row -> row.stop.site().name()),
        ADDRESS(row -> row.stop.site().address()),
        VISIT(row -> row.stop.visit()),
        NEXT_VISIT(row -> row.stop.next()),
        ACTION(row -> row.of(Pulled::action, unknown -> "LOOK_INTO", disputed -> "LOOK_INTO")),
        KIND(row -> row.of(Pulled::kind, ToLookInto::kind, Disputed::kind)),
        SPECIFICATION(row -> row.of(Pulled::specification, ToLookInto::specification, Disputed::specification)),
        MAKER(row -> row.of(Pulled::maker, ToLookInto::maker, Disputed::maker)),
        SERIAL(row -> row.of(Pulled::serial, ToLookInto::serial, Disputed::serial)),
        MANUFACTURED(row -> row.of(Pulled::manufactured, unknown -> null, disputed -> null)),
        SIZE(row -> row.of(Pulled::size, ToLookInto::size, Disputed::size)),
        TAG(row -> row.of(Pulled::tag, ToLookInto::tag, Disputed::tag)),
        STATUS(row -> row.of(Pulled::status, unknown -> "UNDETERMINED", Disputed::status)),
        REQUIREMENT(row -> row.of(Pulled::requirement, unknown -> null, disputed -> null)),
        JURISDICTION(row -> row.of(Pulled::jurisdiction, unknown -> null, disputed -> null)),
        DUE(row -> row.of(Pulled::due, unknown -> null, Disputed::due)),
        LAST_DAY(row -> row.of(Pulled::lastDay, unknown -> null, Disputed::lastDay)),
        REASON(row -> row.of(pulled -> pulled.reason().code(), unknown -> "UNDETERMINED",
                disputed -> "PLACE_DISPUTED")),
        REASON_TEXT(row -> row.of(pulled -> pulled.reason().text(), unknown -> String.join(" ", unknown.missing()),
                PullListCsv::claims)),
        RULE(row -> row.of(pulled -> pulled.reason().rule(), unknown -> null, disputed -> null)),
        CITATION(row -> row.of(PullListCsv::citation, unknown -> null, disputed -> null)),
        CHECK(row -> row.of(pulled -> String.join(" ", pulled.check()), unknown -> null,
                disputed -> String.join(" ", disputed.check()))),
        CONTAINER_ID(row -> row.of(Pulled::id, ToLookInto::id, Disputed::id));

        private final Function<Row, @Nullable Object> cell;

        Column(Function<Row, @Nullable Object> cell) {
            this.cell = cell;
        }

        @Nullable
        String in(Row row) {
            var value = cell.apply(row);
            return value == null ? null : SpreadsheetText.guarded(value.toString());
        }
    }

    private PullListCsv() {}

    static String of(PullList list) {
        var text = new StringBuilder(line(Arrays.stream(Column.values()).map(column -> column.name().toLowerCase(
                Locale.ROOT)).toList()));
        list.stops().stream().flatMap(stop -> rows(stop, list.placeDisputed()))
                .forEach(row -> text.append(line(Arrays.stream(Column.values()).map(column -> column.in(row))
                        .toList())));
        return text.toString();
    }

    /** A place that claims a container which others claim too has a row for it, so that whoever is there looks. */
    private static Stream<Row> rows(Stop stop, List<Disputed> disputed) {
        return Stream.of(stop.containers().stream().map(pulled -> new Row(stop, pulled, null, null)),
                stop.undetermined().stream().map(unknown -> new Row(stop, null, unknown, null)),
                disputed.stream().filter(one -> one.isClaimedBy(stop.site()))
                        .map(one -> new Row(stop, null, null, one)))
                .flatMap(Function.identity());
    }

    private static String claims(Disputed disputed) {
        return "Claimed by " + disputed.claims().stream().map(claim -> claim.site().code())
                .collect(Collectors.joining(", ")) + ".";
    }

    private static @Nullable String citation(Pulled pulled) {
        var citation = pulled.reason().citation();
        return citation == null ? null : citation.instrument() + " " + citation.section();
    }

    private static String line(List<? extends @Nullable Object> cells) {
        return CSVFormat.RFC4180.format(cells.toArray()) + "\r\n";
    }
}
