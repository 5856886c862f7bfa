package org.collarbook.registry;

import java.util.regex.Pattern;

/**
 * A table of facts about containers. A merge or a split files them under another record: whoever judges a container reads
 * them from the view {@code filed_…} of the same name, which says which one each counts for.
 */
public record FactTable(String name) {

    private static final Pattern NAME = Pattern.compile("[a-z_]+");

    public FactTable {
        if (!NAME.matcher(name).matches()) {
            throw new IllegalArgumentException("a table of facts named '" + name + "'");
        }
    }
}
