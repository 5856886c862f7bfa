package org.collarbook.compliance.fillcheck;

import java.util.List;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.platform.Caution;
import org.collarbook.platform.Problem;
import org.collarbook.registry.Serial;
import org.collarbook.registry.Tag;
import org.collarbook.registry.Tags;
import org.collarbook.registry.stamps.CollarReading;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;

/** Finds the one container that is meant; refuses by problem where none or several are. */
@Component
public class ContainerFinder {

    /** More containers than this with one serial number are not told apart in one answer. */
    private static final int MOST_CANDIDATES = 20;

    private final KnownContainers containers;
    private final Tags tags;

    ContainerFinder(KnownContainers containers, Tags tags) {
        this.containers = containers;
        this.tags = tags;
    }

    public KnownContainer one(WhichContainer asked) {
        var tag = asked.tag();
        var serial = asked.serial();
        if (tag != null) {
            return byTag(tag);
        }
        if (serial == null) {
            throw new IllegalStateException("a question names a tag or a serial");
        }
        var maker = asked.maker();
        return one(containers.bySerial(serial, asked.specification(), MOST_CANDIDATES).stream()
                .filter(known -> maker == null || maker.equals(known.container().marks().maker())).toList());
    }

    /**
     * By the tag when there is one, else by the serial that was read: of several the one that no line contradicts, and a
     * lone one even though a line does, which the answer then tells.
     */
    KnownContainer one(@Nullable Tag given, CollarReading collar) {
        var tag = given == null && collar.marks().serial() == null ? collar.marks().tag() : given;
        Serial serial = collar.marks().serial();
        if (tag != null) {
            return byTag(tag);
        }
        if (serial == null) {
            throw Problem.invalid("/lines", "NO_SERIAL_READ", collar.lines().size() + " lines",
                    "a line with the serial number, such as S/N 1234; or the tag").asException();
        }
        var found = containers.bySerial(serial, null, MOST_CANDIDATES);
        var fitting = found.stream().filter(known -> StampComparison.of(collar, known).identifies()).toList();
        return one(fitting.isEmpty() ? found : fitting);
    }

    private KnownContainer byTag(Tag tag) {
        return containers.byTag(tag).orElseGet(() -> {
            var formerly = tags.formerly(tag);
            if (formerly.isEmpty()) {
                return one(List.of());
            }
            throw tags.notBorne(tag, formerly).asException();
        });
    }

    private static KnownContainer one(List<KnownContainer> found) {
        if (found.isEmpty()) {
            throw Problem.of(HttpStatus.NOT_FOUND, "NOT_FOUND",
                    "Do not fill: no container in the register bears these marks. " + Caution.TEXT).asException();
        }
        if (found.size() > 1) {
            throw Problem.conflict("MORE_THAN_ONE", "Do not fill yet: " + found.size() + " containers match. Read the"
                    + " specification, the maker's symbol and the month of manufacture off the collar, or scan the tag.")
                    .with("candidates", found.stream().map(Candidate::from).toList()).asException();
        }
        return found.getFirst();
    }
}
