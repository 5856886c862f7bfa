package org.collarbook.regulation.engine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.collarbook.regulation.Condition;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.engine.Part.Asks;
import org.jspecify.annotations.Nullable;

/**
 * The gates of one plan that are in force in a stretch, none of whose values hangs on a policy or on another date; what
 * the family alone answers is answered here, once, and so is what a container in which nothing was found passes.
 * {@code told} is of those that concern every container that they are asked of.
 */
record Questions(Asked ofAny, Asked ofASound, Reason[] told) {

    /** What is left to ask, and the topics that are answered already. */
    record Asked(Line[] lines, int answered) {}

    record Line(Rule rule, Asks asks, Value value, Effect.Gate gate, Test[] requires, @Nullable Reason unread) {

        Test[] tests() {
            return rule.tests;
        }

        int topic() {
            return 1 << asks.question().ordinal();
        }

        /** Whether it concerns every container of the plan and is on. */
        boolean always() {
            return rule.tests.length == 0 && value.isOnByDefault();
        }
    }

    static Questions of(Rule[] gates, @Nullable Specification like, int stretch, LocalDate day) {
        List<Line> lines = new ArrayList<>();
        List<Reason> told = new ArrayList<>();
        for (Rule rule : gates) {
            Value value = rule.textIn(stretch);
            if (value != null && value.effect instanceof Effect.Gate gate && rule.part instanceof Asks asks) {
                Reason unread = value.unreadOn(day);
                Line line = new Line(rule, asks, value, gate, left(gate.requires(), like), unread);
                if (line.always() && unread != null && !told.contains(unread)) {
                    told.add(unread);
                }
                lines.add(line.always() ? new Line(rule, asks, value, gate, line.requires, null) : line);
            }
        }
        Subject sound = new Subject(Facts.builder().condition(Condition.SOUND).build(), day,
                new Timeline(new LocalDate[0]));
        return new Questions(asked(lines, null), asked(lines, sound), grouped(told));
    }

    /** One reason an amendment, naming every section that it may have changed. */
    private static Reason[] grouped(List<Reason> told) {
        Map<String, List<Reason>> byText = new LinkedHashMap<>();
        told.forEach(reason -> byText.computeIfAbsent(reason.text(), _ -> new ArrayList<>()).add(reason));
        return byText.values().stream().map(alike -> alike.size() == 1
                ? alike.getFirst()
                : new Reason(alike.getFirst().code(), alike.getFirst().text() + " It concerns " + alike.stream()
                        .map(reason -> reason.citation() == null ? "" : reason.citation().section()).distinct()
                        .collect(Collectors.joining(", ")) + ".", alike.getFirst().citation()))
                .toArray(Reason[]::new);
    }

    /** Without the conditions that the family answers with yes. */
    private static Test[] left(Test[] requires, @Nullable Specification like) {
        if (like == null) {
            return requires;
        }
        Subject stamped = new Subject(Facts.builder().specification(like).build(), LocalDate.EPOCH,
                new Timeline(new LocalDate[0]));
        return Arrays.stream(requires).filter(test -> !test.byFamilyAlone()
                || test.check().on(stamped) != Verdict.YES).toArray(Test[]::new);
    }

    private static Asked asked(List<Line> lines, @Nullable Subject sound) {
        List<Line> open = new ArrayList<>();
        int answered = 0;
        for (Line line : lines) {
            if (line.always() && (line.requires.length == 0 || sound != null && passes(line, sound))) {
                answered |= line.topic();
            } else {
                open.add(line);
            }
        }
        return new Asked(open.toArray(Line[]::new), answered);
    }

    private static boolean passes(Line line, Subject sound) {
        return Arrays.stream(line.requires).allMatch(test -> test.fact() == Fact.CONDITION
                && test.check().on(sound) == Verdict.YES);
    }
}
