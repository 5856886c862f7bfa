package org.collarbook.regulation;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The dated, cited rules, compiled. Every method is a function of its arguments and the book: nothing throws on valid
 * arguments, and the same book gives the same answer for ever.
 */
public interface RuleBook {

    Assessment assess(Facts facts, LocalDate asOf);

    /** The most that may be put in, by weight; {@code specificGravity} is of the liquid at 60 °F. */
    FillingLimit fillingLimit(Facts facts, @Nullable BigDecimal specificGravity, LocalDate asOf);

    /** What the site's tanks ask to stand beside them, and whether it is there and kept up. */
    SiteAssessment assessSite(SiteFacts facts, LocalDate asOf);

    /** {@code sha256:} and 64 hexadecimal digits over {@link #canonicalText()}. */
    String hash();

    /** The whole book as one text that the loader reads back; comments and layout of the sources are not in it. */
    String canonicalText();

    /** Changes whenever the evaluator may answer differently from the same book, and names what was switched on for it. */
    String engineVersion();

    /** The first day after {@code day} on which some value starts or ends, or null when none lies ahead. */
    @Nullable
    LocalDate nextSwitchAfter(LocalDate day);

    List<RuleInfo> rules();

    /** Whether something can be switched on by this name: a rule's id, or that of a {@link Basis}. */
    default boolean canEnable(String name) {
        return Arrays.stream(Basis.values()).anyMatch(basis -> basis.name().equals(name))
                || rules().stream().anyMatch(rule -> rule.id().equals(name));
    }

    /** What is knowingly left out of the texts that the rules come from. */
    List<NotHeld> notHeld();

    /** Every rule of the jurisdictions asked, with what became of it in {@link #assess}. */
    List<Considered> explain(Facts facts, LocalDate asOf);

    /**
     * The first day after {@code day} on which the same facts may be judged otherwise though no rule changes and no due
     * month passes: a fact dated ahead, a permit or a service life that ends. Null when there is none.
     */
    @Nullable
    LocalDate nextChangeAfter(Facts facts, LocalDate day);
}
