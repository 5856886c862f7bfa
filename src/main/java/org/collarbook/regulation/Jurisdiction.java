package org.collarbook.regulation;

import java.util.regex.Pattern;

/** The country, or province as {@code CA-BC}, whose rules are asked about. */
public record Jurisdiction(String code) {

    private static final Pattern SHAPE = Pattern.compile("[A-Z]{2,3}(-[A-Z0-9]{1,3})?");
    public static final Jurisdiction US = new Jurisdiction("US");

    /** {@code GB} is the United Kingdom, and RID says for rail what ADR says for the road. */
    public Jurisdiction {
        code = switch (code) {
            case "GB" -> "UK";
            case "RID" -> "ADR";
            default -> code;
        };
        if (!isWellFormed(code)) {
            throw new IllegalArgumentException("jurisdiction '" + code + "': expected a code such as US or CA-BC");
        }
    }

    public static boolean isWellFormed(String text) {
        return SHAPE.matcher(text).matches();
    }

    /** The country of a province; a country is its own. */
    public Jurisdiction country() {
        int dash = code.indexOf('-');
        return dash < 0 ? this : new Jurisdiction(code.substring(0, dash));
    }

    /** Whether it is that one, or a province of it. */
    public boolean isWithin(Jurisdiction other) {
        return equals(other) || code.startsWith(other.code) && code.charAt(other.code.length()) == '-';
    }

    @Override
    public String toString() {
        return code;
    }
}
