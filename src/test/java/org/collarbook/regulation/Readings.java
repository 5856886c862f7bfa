package org.collarbook.regulation;

import java.util.List;
import org.collarbook.regulation.Reading.Ambiguous;
import org.collarbook.regulation.Reading.Read;
import org.collarbook.regulation.Reading.Unreadable;

/** What a test expects a reading to be; any other fails it and is shown. */
public final class Readings {

    private Readings() {}

    public static <T> Read<T> read(Reading<T> reading) {
        return reading instanceof Read<T> read ? read : fail(reading);
    }

    public static <T> T value(Reading<T> reading) {
        return read(reading).value();
    }

    public static <T> List<String> warnings(Reading<T> reading) {
        return read(reading).warnings();
    }

    public static <T> Ambiguous<T> ambiguous(Reading<T> reading) {
        return reading instanceof Ambiguous<T> ambiguous ? ambiguous : fail(reading);
    }

    public static <T> Unreadable<T> unreadable(Reading<T> reading) {
        return reading instanceof Unreadable<T> unreadable ? unreadable : fail(reading);
    }

    private static <R> R fail(Object reading) {
        throw new AssertionError("read otherwise: " + reading);
    }
}
