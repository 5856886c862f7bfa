package org.collarbook.custody.routes;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;

import org.collarbook.custody.routes.VisitPattern.NotDriven;
import org.springframework.http.HttpStatus;

/** What is said about a single day of a route. */
public enum ExceptionKind {
    SKIPPED {
        @Override
        void check(VisitPattern visits, LocalDate day) {
            if (!visits.isVisit(day)) {
                var why = visits.notDriven(day, day).stream().map(NotDriven::words).collect(Collectors.joining("; "));
                throw NearestVisits.to(day, List.of(visits)).notAVisit(day, why).asException();
            }
        }
    },
    ADDED {
        @Override
        void check(VisitPattern visits, LocalDate day) {
            if (visits.isVisit(day)) {
                throw NearestVisits.to(day, List.of(visits)).tell(HttpStatus.CONFLICT, "VISIT_ALREADY", day
                        + " is a visit of this route by its rule, so it cannot be added (if it is skipped, delete"
                        + " that)").asException();
            }
        }
    };

    /** Refuses by problem what would say nothing new; {@code visits} are those without the exception. */
    abstract void check(VisitPattern visits, LocalDate day);
}
