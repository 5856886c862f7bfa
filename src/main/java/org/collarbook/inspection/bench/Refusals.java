package org.collarbook.inspection.bench;

import java.util.ArrayList;
import java.util.List;

import org.collarbook.platform.Inputs;
import org.collarbook.platform.ProblemException;
import org.collarbook.regulation.Citation;
import org.jspecify.annotations.Nullable;

/** Everything that is wrong with a record, each with the rule that it breaks where it breaks one. */
public final class Refusals {

    /** Which of the inputs at fault rests on which rule. */
    public record Cited(String pointer, String code, Citation citation) {}

    private final Inputs inputs = new Inputs();
    private final String prefix;
    private final List<Cited> cited = new ArrayList<>();

    public Refusals() {
        this("");
    }

    /** Of a record that stands at a place in the request. */
    public Refusals(String prefix) {
        this.prefix = prefix;
    }

    /** For what rests on no rule. */
    public void refuse(String pointer, String code, @Nullable Object found, String accepted) {
        inputs.refuse(prefix + pointer, code, found == null ? null : found.toString(), accepted);
    }

    /** A text of 1 to {@code longest} characters; null and blank are both "not known". */
    public @Nullable String text(String pointer, @Nullable String given, int longest) {
        return inputs.optional(prefix + pointer, given, longest);
    }

    public @Nullable String required(String pointer, @Nullable String given, int longest) {
        return inputs.required(prefix + pointer, given, longest);
    }

    /** One of the words of an enumeration. */
    public <E extends Enum<E>> @Nullable E word(String pointer, @Nullable String given, Class<E> words) {
        return inputs.word(prefix + pointer, given, words);
    }

    public boolean areAny() {
        return inputs.areRefused();
    }

    public void refuse(String pointer, String code, @Nullable Object found, String accepted,
            @Nullable Citation rule) {
        if (rule == null) {
            refuse(pointer, code, found, accepted);
            return;
        }
        refuse(pointer, code, found, accepted + " (" + Sources.named(rule) + ")");
        cited.add(new Cited(prefix + pointer, code, rule));
    }

    /** Throws the problem answer when anything was refused. */
    public void done() {
        try {
            inputs.done();
        } catch (ProblemException refused) {
            throw cited.isEmpty() ? refused : refused.problem().with("citations", cited).asException();
        }
    }
}
