package org.collarbook.registry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Everything that was done about which container a record is. */
@Component
public class IdentityHistory {

    private final CorrectionRows corrections;
    private final IdentityActRows acts;

    IdentityHistory(CorrectionRows corrections, IdentityActRows acts) {
        this.corrections = corrections;
        this.acts = acts;
    }

    /** The latest first. */
    public Page<IdentityEntry> of(UUID container, @Nullable UUID before, PageSize size) {
        List<IdentityEntry> read = new ArrayList<>();
        corrections.of(container, before, size.limit()).forEach(one -> read.add(new IdentityEntry.Corrected(one)));
        acts.of(container, before, size.limit()).forEach(one -> read.add(new IdentityEntry.Acted(one)));
        // by their text, as the database compares them
        read.sort(Comparator.comparing((IdentityEntry entry) -> entry.id().toString()).reversed());
        return Page.of(read.subList(0, Math.min(read.size(), size.limit())), size, entry -> Cursor.after(entry.id()));
    }
}
