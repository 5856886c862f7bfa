package org.collarbook.schedule.forecast;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.RuleBook;
import org.jspecify.annotations.Nullable;

/** Writes down what is told of one container, a line each. */
final class Recording implements Sink {

    final List<String> done = new ArrayList<>();
    final List<String> silent = new ArrayList<>();
    final List<String> leaves = new ArrayList<>();
    int notAccepted;
    int neverDone;

    static Recording of(RuleBook rules, Facts facts, LocalDate today, int years, Choice choice) {
        var switches = new TreeSet<LocalDate>();
        for (var day = rules.nextSwitchAfter(today); day != null; day = rules.nextSwitchAfter(day)) {
            switches.add(day);
        }
        var recording = new Recording();
        var end = YearMonth.from(today).plusMonths(12L * years - 1).atEndOfMonth();
        new Future(rules, switches, end, facts, today, choice, recording).play();
        return recording;
    }

    @Override
    public void done(YearMonth month, Requirement requirement, @Nullable Method method, boolean late) {
        done.add(month + " " + requirement + " " + method + (late ? " late" : ""));
    }

    @Override
    public void silent(@Nullable Requirement requirement, WhyNot why, boolean later) {
        silent.add(requirement + " " + why + (later ? " later" : ""));
    }

    @Override
    public void leaves(YearMonth month) {
        leaves.add(month.toString());
    }

    @Override
    public void methodNotAccepted() {
        notAccepted++;
    }

    @Override
    public void noLastMethod() {
        neverDone++;
    }

    /** The months of the shell alone, such as {@code 2028-05 EXTERNAL_VISUAL}. */
    List<String> shell() {
        return done.stream().filter(one -> one.contains(" SHELL ")).map(one -> one.replace(" SHELL", "")).toList();
    }
}
