package org.collarbook.platform;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Collection;

import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.CalendarComponent;
import net.fortuna.ical4j.model.property.ProdId;
import net.fortuna.ical4j.model.property.immutable.ImmutableCalScale;
import net.fortuna.ical4j.model.property.immutable.ImmutableVersion;

/** A calendar (RFC 5545), checked before it leaves. */
public final class CalendarFile {

    public static final String TYPE = "text/calendar";

    private CalendarFile() {}

    /** {@code of} is what the calendar is of; it holds at least one thing. */
    public static void write(String of, Collection<CalendarComponent> components, OutputStream out) throws IOException {
        var calendar = new Calendar();
        calendar.add(new ProdId("-//Collarbook//" + of + "//EN"));
        calendar.add(ImmutableVersion.VERSION_2_0);
        calendar.add(ImmutableCalScale.GREGORIAN);
        components.forEach(calendar::add);
        var checked = calendar.validate();
        if (checked.hasErrors()) {
            throw new IllegalStateException("the calendar breaks RFC 5545: " + checked);
        }
        out.write(CalendarLines.folded(calendar.toString()).getBytes(StandardCharsets.UTF_8));
    }

    /** RFC 5545 takes no control characters in a text, and a line of ours is one line. */
    public static String plain(String text) {
        return text.replaceAll("\\p{Cntrl}", " ");
    }
}
