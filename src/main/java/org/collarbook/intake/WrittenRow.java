package org.collarbook.intake;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

import org.collarbook.holds.HoldReason;
import org.collarbook.registry.ContainerRows;
import org.collarbook.registry.Ownership;
import org.collarbook.registry.Particulars;
import org.jspecify.annotations.Nullable;

import tools.jackson.databind.json.JsonMapper;

/** Turns what the register has of one container into the cells of a row, as the import reads them. */
record WrittenRow(JsonMapper json, LocalDate today) {

    /** As many decimals as the import reads. */
    private static final int DECIMALS = 15;

    @Nullable
    String[] cells(ResultSet row) throws SQLException {
        var container = ContainerRows.read(row, 0);
        var cells = new EnumMap<LedgerColumn, String>(LedgerColumn.class);
        WrittenMarks.put(container.marks(), today, cells);
        put(cells, LedgerColumn.TAG, container.tag());
        particulars(container.particulars(), cells);
        place(row, cells);
        var declared = WrittenDeclarations.of(container, list(row, "declarations"), row.getBoolean("abroad"));
        var tests = WrittenTest.of(list(row, "tests"));
        tests.stream().map(WrittenTest::declaration).filter(Objects::nonNull).forEach(declared::addTest);
        new WrittenTests(container, declared, today).put(tests, cells);
        declared.put(cells);
        put(cells, LedgerColumn.FILLED_ON, row.getString("filled_on"));
        put(cells, LedgerColumn.EMPTIED_ON, row.getString("emptied_on"));
        put(cells, LedgerColumn.STATUS, status(list(row, "holds")));
        put(cells, LedgerColumn.PARTS, parts(list(row, "parts")));
        put(cells, LedgerColumn.OUT_OF_SERVICE, stops(list(row, "stops")));
        return Arrays.stream(LedgerColumn.values()).map(cells::get).toArray(String[]::new);
    }

    static void put(Map<LedgerColumn, String> cells, LedgerColumn column, @Nullable Object value) {
        if (value != null) {
            cells.put(column, value instanceof Boolean truth ? truth ? "yes" : "no" : value.toString());
        }
    }

    private List<@Nullable String[]> list(ResultSet row, String column) throws SQLException {
        var text = row.getString(column);
        return text == null ? List.of() : Arrays.asList(json.readValue(text, String[][].class));
    }

    private static void particulars(Particulars known, Map<LedgerColumn, String> cells) {
        var service = known.service();
        var permit = known.permit();
        put(cells, LedgerColumn.USE, known.use());
        put(cells, LedgerColumn.LADING, service.lading());
        put(cells, LedgerColumn.EXCLUSIVE, service.exclusive());
        put(cells, LedgerColumn.CORROSION_FREE, service.corrosionFree());
        put(cells, LedgerColumn.COATED, known.coated());
        put(cells, LedgerColumn.MARKS_LEGIBLE, known.marksLegible());
        put(cells, LedgerColumn.INSTALLATION, known.installation());
        put(cells, LedgerColumn.LINED, known.lined());
        put(cells, LedgerColumn.STEEL, known.steel());
        put(cells, LedgerColumn.RELIEF_VALVE, known.reliefValve());
        put(cells, LedgerColumn.OUT_OF_SERVICE_SINCE, known.outOfServiceSince());
        put(cells, LedgerColumn.PERMIT_NUMBER, permit == null ? null : permit.number());
        put(cells, LedgerColumn.PERMIT_EXPIRES, permit == null ? null : permit.expires());
        put(cells, LedgerColumn.PERMIT_INTERVAL_YEARS, permit == null ? null : permit.intervalYears());
        put(cells, LedgerColumn.EXTENDED_PERIOD, known.extendedPeriod());
        put(cells, LedgerColumn.SCHEME_DUE, known.schemeDue());
        owner(known.ownership(), cells);
    }

    /** The owner alone where that tells all. */
    private static void owner(Ownership known, Map<LedgerColumn, String> cells) {
        var name = known.owner();
        var owned = known.owned();
        boolean own = ParticularsReader.DISTRIBUTOR.equalsIgnoreCase(name);
        if (Boolean.TRUE.equals(owned) && (name == null || own)) {
            cells.put(LedgerColumn.OWNER, ParticularsReader.DISTRIBUTOR);
        } else {
            put(cells, LedgerColumn.OWNER, name);
            if (name == null ? owned != null : owned == null || owned || own) {
                cells.put(LedgerColumn.OWNED, owned == null ? "unknown" : owned ? "yes" : "no");
            }
        }
        put(cells, LedgerColumn.OWNER_CONSENT, known.consent());
    }

    private static void place(ResultSet row, Map<LedgerColumn, String> cells) throws SQLException {
        put(cells, LedgerColumn.SITE, row.getString("site_code"));
        put(cells, LedgerColumn.SITE_NAME, row.getString("site_name"));
        put(cells, LedgerColumn.SITE_KIND, row.getString("site_kind"));
        put(cells, LedgerColumn.CUSTOMER, row.getString("customer_code"));
        put(cells, LedgerColumn.CUSTOMER_NAME, row.getString("customer_name"));
        put(cells, LedgerColumn.LATITUDE, degrees(row.getObject("latitude", Double.class)));
        put(cells, LedgerColumn.LONGITUDE, degrees(row.getObject("longitude", Double.class)));
        put(cells, LedgerColumn.SITE_ZONE, row.getString("zone"));
        put(cells, LedgerColumn.SITE_JURISDICTION, row.getString("jurisdiction"));
        put(cells, LedgerColumn.SITE_ADDRESS, row.getString("address"));
    }

    private static @Nullable String degrees(@Nullable Double degrees) {
        return degrees == null
                ? null
                : BigDecimal.valueOf(degrees).setScale(DECIMALS, RoundingMode.HALF_EVEN).stripTrailingZeros()
                        .toPlainString();
    }

    private static @Nullable String status(List<@Nullable String[]> holds) {
        return lines(holds.stream().map(hold -> {
            var parts = new ArrayList<String>();
            parts.add(Constants.word(String.valueOf(hold[0])) + " since " + hold[1]);
            add(parts, "note", hold[2]);
            return parts;
        }).toList());
    }

    private static @Nullable String parts(List<@Nullable String[]> parts) {
        return lines(parts.stream().map(part -> {
            var told = new ArrayList<String>();
            told.add(Constants.word(String.valueOf(part[0])));
            add(told, "made", part[1]);
            add(told, "fitted", part[2]);
            add(told, "maker", part[3]);
            add(told, "model", part[4]);
            add(told, "serial", part[5]);
            add(told, "label", part[6] == null ? null : Constants.word(part[6]));
            add(told, "removed", part[7]);
            add(told, "reason", part[8]);
            add(told, "for", "true".equals(part[9]) ? "good" : null);
            return told;
        }).toList());
    }

    private static @Nullable String stops(List<@Nullable String[]> stops) {
        return lines(stops.stream().map(stop -> {
            var told = new ArrayList<String>();
            told.add(stop[1] == null ? "since " + stop[0] : stop[0] + " to " + stop[1]);
            add(told, "reason", stop[2]);
            add(told, "note", stop[3]);
            return told;
        }).toList());
    }

    static void add(List<String> parts, String word, @Nullable String value) {
        if (value != null) {
            parts.add(word + " " + value);
        }
    }

    /** In an order of their own, so that it does not tell in which they were recorded. */
    private static @Nullable String lines(List<? extends List<String>> items) {
        return items.isEmpty()
                ? null
                : ListItem.write(items.stream().<List<String>>map(item -> item)
                        .sorted(Comparator.comparing(item -> String.join(" | ", item))).toList());
    }
}
