package org.collarbook.dispatch.lists;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.UUID;

import org.collarbook.holds.HoldReason;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/**
 * One container of a list, as read; {@code call} is the number of its stop. {@code undetermined}: it is to be looked into,
 * not to come back. {@code leavesOn}: the day by which it goes out of service by date alone, {@code leavesAs} that
 * status. {@code planned}: the visit on which a plan pulls it, though it would last. {@code reasons} are read of what is undetermined, {@code holds} of what is out of service.
 */
record PullRow(int call, boolean undetermined, UUID id, ContainerKind kind, String specification,
        @Nullable String maker, String serial, @Nullable YearMonth manufactured, String size, @Nullable String tag,
        Status status, String requirement, @Nullable String jurisdiction, @Nullable YearMonth due,
        @Nullable LocalDate leavesOn, @Nullable Status leavesAs, @Nullable String rule, @Nullable Planned planned,
        List<String> reasons,
        List<HoldReason> holds) {

    /** {@code missed}: on an earlier visit than the one that is asked about. */
    record Planned(int plan, LocalDate visit, boolean missed) {}

    static PullRow read(ResultSet row, int number) throws SQLException {
        var leavesAs = row.getString("leaves_as");
        return new PullRow(row.getInt("call"), row.getBoolean("undetermined"), row.getObject("id", UUID.class),
                ContainerKind.valueOf(row.getString("kind")), row.getString("specification"), row.getString("maker"),
                row.getString("serial"), month(row, "manufactured"), row.getString("size"), row.getString("tag"),
                Status.valueOf(row.getString("status")), row.getString("requirement"), row.getString("jurisdiction"),
                month(row, "due"), row.getObject("leaves_on", LocalDate.class),
                leavesAs == null ? null : Status.valueOf(leavesAs), row.getString("rule"), planned(row),
                texts(row, "reasons"),
                texts(row, "holds").stream().map(HoldReason::valueOf).toList());
    }

    private static @Nullable Planned planned(ResultSet row) throws SQLException {
        var visit = row.getObject("planned", LocalDate.class);
        return visit == null ? null : new Planned(row.getInt("plan"), visit, row.getBoolean("missed"));
    }

    private static @Nullable YearMonth month(ResultSet row, String column) throws SQLException {
        var day = row.getObject(column, LocalDate.class);
        return day == null ? null : YearMonth.from(day);
    }

    private static List<String> texts(ResultSet row, String column) throws SQLException {
        var array = row.getArray(column);
        return array == null ? List.of() : List.of((String[]) array.getArray());
    }

    /** An extinguisher stays as well, and is never registered as a container. */
    PullList.Action action() {
        return switch (kind) {
            case CYLINDER -> PullList.Action.SWAP;
            case CARGO_TANK, PORTABLE_TANK -> PullList.Action.BRING_IN;
            case STATIONARY_TANK, EXTINGUISHER -> PullList.Action.WORK_AT_SITE;
        };
    }

    /** That of its due month, or the one before it goes out of service. */
    @Nullable
    LocalDate lastDay() {
        return due == null || leavesBeforeItIsDue()
                ? leavesOn == null ? null : leavesOn.minusDays(1)
                : due.atEndOfMonth();
    }

    boolean leavesBeforeItIsDue() {
        return leavesOn != null && (due == null || !leavesOn.isAfter(due.atEndOfMonth()));
    }
}
