package org.collarbook.registry.stamps;

import java.util.List;
import java.util.regex.Pattern;

import org.collarbook.registry.Serial;
import org.collarbook.registry.Tag;
import org.collarbook.registry.stamps.StampReader.Taken;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.StampText;
import org.jspecify.annotations.Nullable;

/**
 * A GS1 element string as a scanner hands it over: no brackets, and perhaps the symbology identifier in front, which for
 * GS1 data is ]C1, ]e0, ]d2, ]Q3 or ]J1 (ISO/IEC 15424 and the GS1 General Specifications, from memory).
 */
final class ScannedTag {

    private static final Pattern SYMBOLOGY = Pattern.compile("\\](?:C1|e0|d2|Q3|J1) ?");
    private static final Pattern KEY = Pattern.compile("800[34]\\S*");
    private static final Pattern ASSET_TYPE = Pattern.compile("80030\\d{13}\\S*");
    /** A company prefix of six digits at least, and a reference; nothing shorter is worth the doubt. */
    private static final Pattern ASSET = Pattern.compile("8004\\d{6}\\S+");
    private static final int BRACKETS = 2;
    private static final int KEY_LENGTH = 4;

    private ScannedTag() {}

    /** Null where the line is none. */
    static @Nullable Taken read(StampText text) {
        var plain = text.plain();
        var symbology = SYMBOLOGY.matcher(plain);
        int start = symbology.lookingAt() ? symbology.end() : 0;
        var element = plain.substring(start);
        boolean told = start > 0 && KEY.matcher(element).matches();
        if (!told && !ASSET_TYPE.matcher(element).matches() && !ASSET.matcher(element).matches()) {
            return null;
        }
        var bracketed = "(" + element.substring(0, KEY_LENGTH) + ")" + element.substring(KEY_LENGTH);
        return switch (Tag.tryParse(bracketed)) {
            case Parsed<Tag>(var tag, var _) -> told || element.startsWith("8003")
                    ? new Taken(StampKind.TAG, tagged(text, tag))
                    : new Taken(null, tagOrSerial(text, tag));
            case Rejected<Tag>(int index, var _, var expected) -> new Taken(StampKind.TAG, text.unreadable(start
                    + index - BRACKETS, expected));
        };
    }

    private static Reading<Stamp> tagged(StampText text, Tag tag) {
        var warnings = text.warnings();
        warnings.add("read as a GS1 element string without its brackets");
        return new Reading.Read<>(text.raw(), new Stamp.Tagged(tag), warnings);
    }

    /** A GIAI has no check digit that would tell it from a serial number. */
    private static Reading<Stamp> tagOrSerial(StampText text, Tag tag) {
        return Serial.tryParse(text.capitals()) instanceof Parsed<Serial>(var serial, var _)
                ? new Reading.Ambiguous<>(text.raw(), List.of(new Stamp.Tagged(tag), new Stamp.Numbered(serial)),
                        "a GS1 key 8004 without brackets has no check digit and may be a serial number; write (8004) or"
                                + " S/N before it")
                : tagged(text, tag);
    }
}
