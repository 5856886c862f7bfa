package org.collarbook.intake;

import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** Remembers the last few thousand that were looked up by code: neighbouring rows of a ledger name the same places. */
final class Recalled<T> {

    private static final int MOST = 10_000;

    private final Map<String, T> recalled = new LinkedHashMap<>(16, 0.75f, true) {

        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, T> eldest) {
            return size() > MOST;
        }
    };

    /** Those of the codes that are known; only what is not remembered is looked up. */
    Map<String, T> of(Set<String> codes, Function<Collection<String>, Map<String, T>> lookUp) {
        var known = new HashMap<String, T>();
        var asked = codes.stream().filter(code -> {
            var one = recalled.get(code);
            return one == null || known.put(code, one) != null;
        }).toList();
        if (!asked.isEmpty()) {
            known.putAll(lookUp.apply(asked));
            recalled.putAll(known);
        }
        return known;
    }
}
