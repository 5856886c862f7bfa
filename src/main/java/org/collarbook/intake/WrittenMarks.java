package org.collarbook.intake;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;

import org.collarbook.registry.Marks;
import org.collarbook.registry.Stamped;
import org.collarbook.registry.StampedMarks;
import org.jspecify.annotations.Nullable;

/** Writes marks as stamped; a stamp that would be read as another value today, or not at all, in its plain form. */
final class WrittenMarks {

    private WrittenMarks() {}

    static void put(Marks marks, LocalDate today, Map<LedgerColumn, String> cells) {
        var stamped = new EnumMap<LedgerColumn, Stamped<?>>(LedgerColumn.class);
        stamped.put(LedgerColumn.SPECIFICATION, marks.specification());
        stamped.put(LedgerColumn.SERIAL, marks.serial());
        put(stamped, LedgerColumn.MANUFACTURED, marks.manufactured());
        put(stamped, LedgerColumn.WATER_CAPACITY, marks.waterCapacity());
        put(stamped, LedgerColumn.TARE, marks.tare());
        WrittenRow.put(cells, LedgerColumn.KIND, marks.kind());
        WrittenRow.put(cells, LedgerColumn.MAKER, marks.maker());
        WrittenRow.put(cells, LedgerColumn.SERVICE_PRESSURE,
                marks.servicePressure() == null ? null : marks.servicePressure().psig());
        stamped.forEach((column, mark) -> cells.put(column, mark.asStamped()));
        if (!readsBack(marks, today, cells)) {
            stamped.forEach((column, mark) -> cells.put(column, mark.value().toString()));
            stamped.forEach((column, mark) -> {
                cells.put(column, mark.asStamped());
                if (!readsBack(marks, today, cells)) {
                    cells.put(column, mark.value().toString());
                }
            });
        }
    }

    private static void put(Map<LedgerColumn, Stamped<?>> stamped, LedgerColumn column, @Nullable Stamped<?> mark) {
        if (mark != null) {
            stamped.put(column, mark);
        }
    }

    private static boolean readsBack(Marks marks, LocalDate today, Map<LedgerColumn, String> cells) {
        var tare = cells.get(LedgerColumn.TARE);
        if (tare != null && Units.hasComma(tare)) {
            return false;
        }
        var read = new StampedMarks(cells.get(LedgerColumn.KIND), cells.get(LedgerColumn.SPECIFICATION),
                cells.get(LedgerColumn.MAKER), cells.get(LedgerColumn.SERIAL), cells.get(LedgerColumn.MANUFACTURED),
                cells.get(LedgerColumn.WATER_CAPACITY), cells.get(LedgerColumn.TARE),
                cells.get(LedgerColumn.SERVICE_PRESSURE)).read(today).marks();
        return read != null && plain(read).equals(plain(marks));
    }

    private static Marks plain(Marks marks) {
        return new Marks(marks.kind(), Stamped.of(marks.specification().value()), marks.maker(),
                Stamped.of(marks.serial().value()), plain(marks.manufactured()), plain(marks.waterCapacity()),
                plain(marks.tare()), marks.servicePressure());
    }

    private static <T> @Nullable Stamped<T> plain(@Nullable Stamped<T> mark) {
        return mark == null ? null : Stamped.of(mark.value());
    }
}
