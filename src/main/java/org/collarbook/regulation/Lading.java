package org.collarbook.regulation;

import java.util.regex.Pattern;

/** What is in it: an open list of names such as {@code LPG}, {@code ANHYDROUS_AMMONIA}, {@code CARBON_DIOXIDE}. */
public record Lading(String name) {

    private static final Pattern SHAPE = Pattern.compile("[A-Z][A-Z0-9_]{1,63}");
    public static final Lading LPG = new Lading("LPG");

    public Lading {
        if (!isWellFormed(name)) {
            throw new IllegalArgumentException("lading '" + name + "': expected capitals, digits and _, such as LPG");
        }
        name = name.intern();
    }

    public static boolean isWellFormed(String text) {
        return SHAPE.matcher(text).matches();
    }

    @Override
    public String toString() {
        return name;
    }
}
