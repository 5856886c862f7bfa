package org.collarbook.custody.routes;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.collarbook.platform.Problem;

/** What is said about a single day of a route. */
public enum ExceptionKind {
    SKIPPED {
        @Override
        void check(VisitPattern visits, LocalDate day) {
            if (!visits.isVisit(day)) {
                throw refused("NOT_A_VISIT", day + " is no visit of this route, so it cannot be skipped.", visits, day);
            }
        }
    },
    ADDED {
        @Override
        void check(VisitPattern visits, LocalDate day) {
            if (visits.isVisit(day)) {
                throw refused("VISIT_ALREADY", day + " is a visit of this route by its rule, so it cannot be added;"
                        + " if it is skipped, delete that.", visits, day);
            }
        }
    };

    /** Refuses by problem what would say nothing new; {@code visits} are those without the exception. */
    abstract void check(VisitPattern visits, LocalDate day);

    private static RuntimeException refused(String code, String detail, VisitPattern visits, LocalDate day) {
        List<LocalDate> nearest = Stream.of(visits.previous(day), visits.next(day)).flatMap(Optional::stream).toList();
        var near = nearest.isEmpty()
                ? " No other visit is known."
                : nearest.stream().map(LocalDate::toString)
                        .collect(Collectors.joining(" and ", " The nearest visits: ", "."));
        return Problem.conflict(code, detail + near).with("nearest", nearest).asException();
    }
}
