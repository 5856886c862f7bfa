package org.collarbook.intake.scans;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.compliance.fillcheck.WhichContainer;
import org.collarbook.platform.FieldError;
import org.collarbook.registry.Absorbed;
import org.collarbook.registry.Containers;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.registry.Serial;
import org.collarbook.registry.Tag;
import org.collarbook.registry.Tags;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Finds the containers that many lines name, and holds them until the transaction ends. */
@Component
class NamedContainers {

    private static final String REGISTER_IT = "what the register knows: register the container, then send this line again";

    private final Containers containers;
    private final Absorbed absorbed;
    private final Tags tags;

    NamedContainers(Containers containers, Absorbed absorbed, Tags tags) {
        this.tags = tags;
        this.containers = containers;
        this.absorbed = absorbed;
    }

    /** The container that a line names, or why it is not known. */
    sealed interface Named {

        record Found(UUID container) implements Named {}

        record NotFound(FieldError error) implements Named {}
    }

    /** By the place of the line in its batch, and the pointer to each. */
    Map<Integer, Map<String, Named>> lock(Map<Integer, ReadLine.Line> lines) {
        var marks = lines.values().stream().flatMap(line -> line.marks().values().stream()).toList();
        var byTag = containers.byTags(marks.stream().map(WhichContainer::tag).filter(Objects::nonNull).toList());
        var bySerial = containers
                .bySerials(marks.stream().map(WhichContainer::serial).filter(Objects::nonNull).toList());
        var takenOff = tags.lastTakenOff(byTag.keySet());
        var named = new HashMap<Integer, Map<String, Named>>();
        lines.forEach((place, line) -> {
            var ofLine = new TreeMap<String, Named>();
            line.line().containers().forEach((pointer, asked) -> {
                var read = line.marks().get(pointer);
                ofLine.put(pointer, read == null
                        ? new Named.Found(Objects.requireNonNull(asked.containerId()))
                        : named(pointer, read, line, byTag, bySerial, takenOff));
            });
            named.put(place, ofLine);
        });
        var known = containers.lock(found(named.values()));
        // a statement of its own: a merge that the lock has waited for is seen by the next one only
        var closed = Set.copyOf(absorbed.among(known));
        named.values().forEach(ofLine -> ofLine.replaceAll((pointer, one) -> one instanceof Named.Found(var id)
                ? !known.contains(id)
                        ? unknown(pointer + "/containerId", id)
                        : closed.contains(id) ? merged(pointer, id) : one
                : one));
        return named;
    }

    private static List<UUID> found(Collection<Map<String, Named>> named) {
        return named.stream().flatMap(ofLine -> ofLine.values().stream()).filter(Named.Found.class::isInstance)
                .map(one -> ((Named.Found) one).container()).distinct().toList();
    }

    private static Named named(String pointer, WhichContainer marks, ReadLine.Line line, Map<Tag, UUID> byTag,
            Map<Serial, Collection<RegisteredContainer>> bySerial, Map<Tag, Tags.Former> takenOff) {
        var tag = marks.tag();
        if (tag != null) {
            var former = takenOff.get(tag);
            if (former != null && former.until().isAfter(line.at())) {
                return new Named.NotFound(new FieldError(pointer + "/tag", "TAG_MOVED_SINCE", tag.value(),
                        former.movedSince(tag)));
            }
            var tagged = byTag.get(tag);
            return tagged == null ? unknown(pointer + "/tag", tag) : new Named.Found(tagged);
        }
        return one(pointer + "/serial", marks,
                bySerial.getOrDefault(Objects.requireNonNull(marks.serial()), List.of()));
    }

    private static Named one(String pointer, WhichContainer marks, Collection<RegisteredContainer> bearing) {
        var fitting = bearing.stream()
                .filter(one -> fits(marks.specification(), one.marks().specification().value())
                        && fits(marks.maker(), one.marks().maker()))
                .toList();
        if (fitting.size() > 1) {
            return new Named.NotFound(new FieldError(pointer, "MORE_THAN_ONE", fitting.size() + " containers match",
                    "what tells them apart: specification and maker, the tag, or containerId"));
        }
        return fitting.isEmpty()
                ? unknown(pointer, String.valueOf(marks.serial()))
                : new Named.Found(fitting.getFirst().id());
    }

    private static boolean fits(@Nullable Object read, @Nullable Object recorded) {
        return read == null || read.equals(recorded);
    }

    private Named merged(String pointer, UUID id) {
        return new Named.NotFound(new FieldError(pointer + "/containerId", "MERGED", id.toString(),
                "the record that counts for it, " + absorbed.into(id).map(UUID::toString).orElse("")));
    }

    private static Named unknown(String pointer, Object found) {
        return new Named.NotFound(new FieldError(pointer, "UNKNOWN_CONTAINER", found.toString(), REGISTER_IT));
    }
}
