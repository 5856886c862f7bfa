package org.collarbook.registry.stamps;

import java.util.List;

import org.collarbook.regulation.Collar;

/** Every line in its order, and what they make together. */
public record CollarReading(List<StampLine> lines, ReadMarks marks) {

    /** What is known beforehand serves every line, and what a line says serves those after it. */
    public static CollarReading of(List<String> lines, Collar known) {
        return new StampReader(known).read(lines);
    }
}
