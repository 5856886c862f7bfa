package org.collarbook.custody;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.ZoneId;
import java.util.UUID;

import org.collarbook.regulation.Jurisdiction;

/** How rows of customers and sites are read. */
final class PlaceRows {

    static final String CUSTOMERS = "select id, version, code, name from customer ";
    static final String SITES = "select id, version, code, name, kind, customer_id, address, latitude, longitude, zone,"
            + " jurisdiction from site ";
    static final String AFTER = "where id > coalesce(?, '00000000-0000-0000-0000-000000000000'::uuid)"
            + " order by id limit ?";

    private PlaceRows() {}

    static NamedCustomer customer(ResultSet row, int number) throws SQLException {
        return new NamedCustomer(row.getObject("id", UUID.class), row.getInt("version"), row.getString("code"),
                row.getString("name"));
    }

    static Place site(ResultSet row, int number) throws SQLException {
        var latitude = row.getObject("latitude", Double.class);
        var longitude = row.getObject("longitude", Double.class);
        return new Place(row.getObject("id", UUID.class), row.getInt("version"), row.getString("code"),
                row.getString("name"), SiteKind.valueOf(row.getString("kind")),
                row.getObject("customer_id", UUID.class), row.getString("address"),
                latitude == null || longitude == null ? null : new Coordinates(latitude, longitude),
                ZoneId.of(row.getString("zone")), new Jurisdiction(row.getString("jurisdiction")));
    }
}
