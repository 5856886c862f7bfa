package org.collarbook.custody.routes;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The days of a rule by the table "expand or limit" of RFC 5545, 3.3.10: whether a day belongs to it is asked of each day
 * by itself, so it shares no thought with a library that makes days. Slow.
 */
final class ByTheTable {

    private static final List<String> WEEKDAYS = List.of("MO", "TU", "WE", "TH", "FR", "SA", "SU");

    private final Map<String, String> parts = new HashMap<>();
    private final LocalDate from;
    private final ChronoUnit every;

    ByTheTable(String rule, LocalDate from) {
        Arrays.stream(rule.split(";")).map(part -> part.split("=")).forEach(part -> parts.put(part[0], part[1]));
        this.from = from;
        this.every = switch (parts.get("FREQ")) {
            case "DAILY" -> ChronoUnit.DAYS;
            case "WEEKLY" -> ChronoUnit.WEEKS;
            case "MONTHLY" -> ChronoUnit.MONTHS;
            default -> ChronoUnit.YEARS;
        };
        imply();
    }

    /** What the rule leaves open comes from the first day. */
    private void imply() {
        if (every == ChronoUnit.WEEKS) {
            parts.putIfAbsent("BYDAY", WEEKDAYS.get(from.getDayOfWeek().getValue() - 1));
        }
        boolean open = !parts.containsKey("BYDAY") && !parts.containsKey("BYMONTHDAY")
                && !parts.containsKey("BYYEARDAY");
        if (open && (every == ChronoUnit.MONTHS || every == ChronoUnit.YEARS)) {
            parts.put("BYMONTHDAY", String.valueOf(from.getDayOfMonth()));
            if (every == ChronoUnit.YEARS) {
                parts.putIfAbsent("BYMONTH", String.valueOf(from.getMonthValue()));
            }
        }
    }

    List<LocalDate> until(LocalDate last) {
        var days = new ArrayList<LocalDate>();
        int most = Integer.parseInt(parts.getOrDefault("COUNT", "1000000"));
        var end = parts.containsKey("UNTIL")
                ? LocalDate.parse(parts.get("UNTIL"), DateTimeFormatter.BASIC_ISO_DATE)
                : last;
        for (var period = start(from); !period.isAfter(last); period = period.plus(interval(), every)) {
            for (var day : positions(set(period))) {
                if (!day.isBefore(from) && !day.isAfter(end) && !day.isAfter(last) && days.size() < most) {
                    days.add(day);
                }
            }
        }
        return days;
    }

    private int interval() {
        return Integer.parseInt(parts.getOrDefault("INTERVAL", "1"));
    }

    private LocalDate start(LocalDate day) {
        return switch (every) {
            case WEEKS -> day.with(TemporalAdjusters.previousOrSame(
                    DayOfWeek.of(WEEKDAYS.indexOf(parts.getOrDefault("WKST", "MO")) + 1)));
            case MONTHS -> day.withDayOfMonth(1);
            case YEARS -> day.withDayOfYear(1);
            default -> day;
        };
    }

    private List<LocalDate> set(LocalDate period) {
        return period.datesUntil(period.plus(1, every)).filter(this::isIn).toList();
    }

    private boolean isIn(LocalDate day) {
        return has("BYMONTH", day.getMonthValue(), 12) && has("BYMONTHDAY", day.getDayOfMonth(), day.lengthOfMonth())
                && has("BYYEARDAY", day.getDayOfYear(), day.lengthOfYear()) && isWeekday(day);
    }

    private boolean has(String part, int number, int most) {
        return !parts.containsKey(part) || Arrays.stream(parts.get(part).split(",")).mapToInt(Integer::parseInt)
                .anyMatch(asked -> asked == number || asked == number - most - 1);
    }

    private boolean isWeekday(LocalDate day) {
        return !parts.containsKey("BYDAY") || Arrays.stream(parts.get("BYDAY").split(",")).anyMatch(asked -> {
            var name = asked.substring(asked.length() - 2);
            if (WEEKDAYS.indexOf(name) + 1 != day.getDayOfWeek().getValue()) {
                return false;
            }
            return asked.length() == 2 || isNth(day, Integer.parseInt(asked.substring(0, asked.length() - 2)));
        });
    }

    /** Within the month where the rule speaks of months, else within the year. */
    private boolean isNth(LocalDate day, int nth) {
        boolean ofMonth = every == ChronoUnit.MONTHS || parts.containsKey("BYMONTH");
        int number = ofMonth ? day.getDayOfMonth() : day.getDayOfYear();
        int most = ofMonth ? day.lengthOfMonth() : day.lengthOfYear();
        return nth > 0 ? (number - 1) / 7 + 1 == nth : (most - number) / 7 + 1 == -nth;
    }

    private List<LocalDate> positions(List<LocalDate> set) {
        if (!parts.containsKey("BYSETPOS")) {
            return set;
        }
        var asked = Arrays.stream(parts.get("BYSETPOS").split(",")).map(Integer::valueOf).toList();
        var kept = new ArrayList<LocalDate>();
        for (int i = 0; i < set.size(); i++) {
            if (asked.contains(i + 1) || asked.contains(i - set.size())) {
                kept.add(set.get(i));
            }
        }
        return kept;
    }
}
