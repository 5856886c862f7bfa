package org.collarbook.intake.scans;

import java.util.Set;
import java.util.TreeSet;

import org.collarbook.access.Doors;
import org.collarbook.access.Role;
import org.springframework.http.HttpMethod;

/** What a line may tell, and the endpoint that takes one of them by itself. */
enum ScanKind {
    MOVEMENT("/api/movements", ScanLine.Moved.class),
    RETURN("/api/movements", ScanLine.Returned.class),
    FILL("/api/fills", ScanLine.Filled.class),
    HOLD("/api/containers/*/holds", ScanLine.Held.class),
    SEEN("/api/sightings", ScanLine.Seen.class),
    SWAP("/api/swaps", ScanLine.Swapped.class);

    private static final String EMPTYINGS = "/api/containers/*/emptyings";

    private final String door;
    private final Class<? extends ScanLine> fields;

    ScanKind(String door, Class<? extends ScanLine> fields) {
        this.door = door;
        this.fields = fields;
    }

    Class<? extends ScanLine> fields() {
        return fields;
    }

    static boolean isOpen(ScanLine line, Set<Role> roles) {
        return switch (line) {
            case ScanLine.Returned returned -> RETURN.isOpen(roles)
                    && (!returned.isEmpty() || Doors.isOpen(HttpMethod.POST, EMPTYINGS, roles));
            case ScanLine.Moved _ -> MOVEMENT.isOpen(roles);
            case ScanLine.Filled _ -> FILL.isOpen(roles);
            case ScanLine.Held _ -> HOLD.isOpen(roles);
            case ScanLine.Seen _ -> SEEN.isOpen(roles);
            case ScanLine.Swapped _ -> SWAP.isOpen(roles);
        };
    }

    private boolean isOpen(Set<Role> roles) {
        return Doors.isOpen(HttpMethod.POST, door, roles);
    }

    /** The roles that may tell such a line, in words. */
    static String roles(ScanLine line) {
        var roles = new TreeSet<String>();
        for (var role : Role.values()) {
            if (isOpen(line, Set.of(role))) {
                roles.add(role.word());
            }
        }
        return "a key with one of the roles " + String.join(", ", roles);
    }
}
