package org.collarbook.schedule.packet;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Collection;
import java.util.Locale;
import java.util.stream.Collectors;

import org.collarbook.custody.NamedCustomer;
import org.collarbook.custody.web.SiteResponse;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Reason;
import org.jspecify.annotations.Nullable;

/** How a printed sheet says on paper what is a constant, a moment or not known. */
public final class PacketWords {

    static final String UNKNOWN = "not known";
    static final String NONE = "none on record";

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss 'UTC'", Locale.US)
            .withZone(ZoneOffset.UTC);

    private PacketWords() {}

    public static String moment(@Nullable Instant at) {
        return at == null ? UNKNOWN : MOMENT.format(at);
    }

    public static String known(@Nullable Object value) {
        return value == null ? UNKNOWN : value.toString();
    }

    /** Such as "on hold" of {@code ON_HOLD}. */
    public static String plain(@Nullable Object constant) {
        return constant == null ? UNKNOWN : constant.toString().replace('_', ' ').toLowerCase(Locale.ROOT);
    }

    static String plain(Collection<?> constants) {
        return constants.isEmpty()
                ? "none"
                : constants.stream().map(PacketWords::plain).collect(
                        Collectors.joining(", "));
    }

    static String yes(@Nullable Boolean is) {
        return is == null ? UNKNOWN : is ? "yes" : "no";
    }

    static String unit(@Nullable Object number, String unit) {
        return number == null ? UNKNOWN : number + " " + unit;
    }

    static String day(@Nullable LocalDate day) {
        return known(day);
    }

    public static String cited(@Nullable Citation citation) {
        return citation == null
                ? "no citation"
                : citation.instrument() + " " + citation.section() + " (" + citation.edition() + "; basis: " + plain(
                        citation.basis()) + ")";
    }

    /** Where the edition is told elsewhere on the sheet. */
    static String section(@Nullable Citation citation) {
        return citation == null ? "no citation" : citation.instrument() + " " + citation.section();
    }

    static String reason(Reason reason) {
        return reason.code() + ": " + reason.text() + (reason.citation() == null
                ? ""
                : " " + cited(reason.citation()));
    }

    static String site(SiteResponse site, @Nullable NamedCustomer customer) {
        return site.code() + ", " + site.name() + "; address: " + known(site.address()) + "; " + plain(site.kind())
                + (customer == null
                        ? ""
                        : " of customer " + customer.code() + ", " + customer.name() + ", id " + customer.id())
                + "; id " + site.id() + "; rules of " + site.jurisdiction() + "; time zone " + site.zone();
    }

    /** With what was told of it, if anything was. */
    static String noted(String text, @Nullable String note) {
        return note == null ? text : text + ": " + note;
    }
}
