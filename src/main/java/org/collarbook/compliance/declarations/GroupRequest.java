package org.collarbook.compliance.declarations;

import java.time.YearMonth;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.platform.Inputs;
import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Size;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** Conditions that all have to be met; {@code everything} is said of the whole register, and beside no condition. */
@Schema(name = "DeclarationGroup")
record GroupRequest(@Nullable Boolean everything, @Nullable List<@Nullable UUID> containers, @Nullable UUID site,
        @Nullable UUID customer, @Nullable String specification, @Nullable String maker, @Nullable String size,
        @Nullable String manufacturedFrom, @Nullable String manufacturedTo, @Nullable String kind) {

    static final int MOST = 10_000;
    private static final String AT = "/group/";

    Group read(Inputs inputs) {
        var from = month(AT + "manufacturedFrom", manufacturedFrom, inputs);
        var to = month(AT + "manufacturedTo", manufacturedTo, inputs);
        if (from != null && to != null && to.isBefore(from)) {
            inputs.refuse(AT + "manufacturedTo", "OUT_OF_RANGE", to.toString(), "not before the first, " + from);
        }
        boolean readable = !inputs.areRefused();
        var design = text(specification)
                ? parsed(AT + "specification", "UNKNOWN_SPECIFICATION", specification, inputs,
                        Specification.tryParse(String.valueOf(specification)))
                : null;
        var symbol = text(maker)
                ? parsed(AT + "maker", "INVALID_MAKER", maker, inputs, MakerSymbol.tryParse(String.valueOf(maker)))
                : null;
        var group = new Group(ids(inputs), site, customer, design, symbol, size(inputs), from, to,
                inputs.word(AT + "kind", kind, ContainerKind.class));
        if (readable && !inputs.areRefused()) {
            refuseUnsaid(group, inputs);
        }
        return group;
    }

    /** The whole register is declared over by nobody who has not said so. */
    private void refuseUnsaid(Group group, Inputs inputs) {
        boolean all = Boolean.TRUE.equals(everything);
        if (group.isEverything() && !all) {
            inputs.present("/group", null, "one condition at least, or everything: true for the whole register");
        } else if (!group.isEverything() && all) {
            inputs.refuse(AT + "everything", "OUT_OF_RANGE", "true", "no condition beside everything: true");
        }
    }

    private @Nullable List<UUID> ids(Inputs inputs) {
        if (containers == null) {
            return null;
        }
        if (containers.isEmpty() || containers.size() > MOST) {
            inputs.refuse(AT + "containers", "OUT_OF_RANGE", containers.size() + " ids", "1 to " + MOST + " ids");
            return null;
        }
        for (int i = 0; i < containers.size(); i++) {
            inputs.present(AT + "containers/" + i, containers.get(i), "the id of a container");
        }
        return containers.stream().filter(Objects::nonNull).distinct().toList();
    }

    private @Nullable Size size(Inputs inputs) {
        if (!text(size)) {
            return null;
        }
        var known = Size.parse(String.valueOf(size)).orElse(null);
        if (known == null) {
            inputs.refuse(AT + "size", "INVALID_SIZE", size, Size.ACCEPTED);
        }
        return known;
    }

    private static boolean text(@Nullable String given) {
        return given != null && !given.isBlank();
    }

    private static <T> @Nullable T parsed(String pointer, String code, @Nullable String given, Inputs inputs,
            ParseResult<T> result) {
        return switch (result) {
            case Parsed<T>(var value, var _) -> value;
            case Rejected<T>(int _, var _, var expected) -> {
                inputs.refuse(pointer, code, given, expected);
                yield null;
            }
        };
    }

    private static @Nullable YearMonth month(String pointer, @Nullable String given, Inputs inputs) {
        if (given == null || given.isBlank()) {
            return null;
        }
        try {
            var month = YearMonth.parse(given.strip());
            if (month.getYear() >= 1900 && month.getYear() < 2200) {
                return month;
            }
        } catch (DateTimeParseException unreadable) {
            // told below, with what is accepted
        }
        inputs.refuse(pointer, "INVALID_MONTH", given, "a month such as 2016-05, from 1900-01 on");
        return null;
    }
}
