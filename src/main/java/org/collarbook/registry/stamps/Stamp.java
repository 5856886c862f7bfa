package org.collarbook.registry.stamps;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.List;
import java.util.stream.Collectors;

import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Serial;
import org.collarbook.registry.Tag;
import org.collarbook.registry.Tare;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StampedMonth;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/** What one line says; each prints its value in plain form. */
public sealed interface Stamp {

    StampKind kind();

    record Design(Specification specification) implements Stamp {

        @Override
        public StampKind kind() {
            return StampKind.SPECIFICATION;
        }

        @Override
        public String toString() {
            return specification.toString();
        }
    }

    /** {@code inspector} is the mark beside the date, under UN and ADR that of country and body. */
    record OriginalTest(@Nullable String inspector, YearMonth month) implements Stamp {

        private String line() {
            return (inspector == null ? "" : inspector + " ") + this;
        }

        @Override
        public StampKind kind() {
            return StampKind.MANUFACTURED;
        }

        @Override
        public String toString() {
            return StampedMonth.print(month);
        }
    }

    record Requalified(RequalificationMark mark) implements Stamp {

        @Override
        public StampKind kind() {
            return StampKind.REQUALIFICATION;
        }

        @Override
        public String toString() {
            return mark.toString();
        }
    }

    record Holds(WaterCapacity capacity) implements Stamp {

        @Override
        public StampKind kind() {
            return StampKind.WATER_CAPACITY;
        }

        @Override
        public String toString() {
            return capacity.toString();
        }
    }

    /** {@code kilograms} is the number as stamped, where it stands in kilograms. */
    record Weighs(Tare tare, @Nullable BigDecimal kilograms) implements Stamp {

        static Weighs of(Tare tare, String stamped) {
            return new Weighs(tare, Tare.inKilograms(stamped));
        }

        @Override
        public StampKind kind() {
            return StampKind.TARE;
        }

        @Override
        public String toString() {
            return tare.toString();
        }
    }

    record Tagged(Tag tag) implements Stamp {

        @Override
        public StampKind kind() {
            return StampKind.TAG;
        }

        @Override
        public String toString() {
            return tag.toString();
        }
    }

    record Numbered(Serial serial) implements Stamp {

        @Override
        public StampKind kind() {
            return StampKind.SERIAL;
        }

        @Override
        public String toString() {
            return serial.toString();
        }
    }

    record MadeBy(MakerSymbol maker) implements Stamp {

        @Override
        public StampKind kind() {
            return StampKind.MAKER;
        }

        @Override
        public String toString() {
            return maker.toString();
        }
    }

    /** In bar, as the UN marks have it: {@code test} is PH, the other PW. */
    record Pressed(boolean test, String bar) implements Stamp {

        @Override
        public StampKind kind() {
            return test ? StampKind.TEST_PRESSURE : StampKind.WORKING_PRESSURE;
        }

        @Override
        public String toString() {
            return bar + " bar";
        }
    }

    record Condemned(Citation citation) implements Stamp {

        @Override
        public StampKind kind() {
            return StampKind.CONDEMNED;
        }

        @Override
        public String toString() {
            return "CONDEMNED";
        }
    }

    record Rejected(String word) implements Stamp {

        @Override
        public StampKind kind() {
            return StampKind.REJECTED;
        }

        @Override
        public String toString() {
            return word;
        }
    }

    record Together(List<Stamp> parts) implements Stamp {

        public Together {
            parts = List.copyOf(parts);
        }

        @Override
        public StampKind kind() {
            return StampKind.COLLAR;
        }

        @Override
        public String toString() {
            return parts.stream().map(part -> part instanceof OriginalTest tested ? tested.line() : part.toString())
                    .collect(Collectors.joining(" / "));
        }
    }
}
