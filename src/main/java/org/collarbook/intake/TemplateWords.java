package org.collarbook.intake;

import java.util.List;
import java.util.function.Predicate;

import org.collarbook.regulation.Lading;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/**
 * The words that the template itself has for a column.
 *
 * @param means whether a word has a meaning there already, in whatever way it is written
 * @param admits whether a word may stand there for one of somebody else's
 * @param accepted those that may, in words
 */
record TemplateWords(Predicate<String> means, Predicate<String> admits, String accepted) {

    static TemplateWords of(LedgerColumn column) {
        return switch (column) {
            case STATUS -> status(StatusReader.words());
            case LADING -> new TemplateWords(word -> ColumnSorts.LADINGS.contains(Constants.name(word)),
                    word -> Lading.isWellFormed(Constants.name(word)), ParticularsReader.LADING);
            case SPECIFICATION -> new TemplateWords(TemplateWords::isSpecification, TemplateWords::isSpecification,
                    "a specification as stamped, such as DOT-4BA240");
            case OWNER -> new TemplateWords(ParticularsReader.DISTRIBUTOR::equalsIgnoreCase, word -> true, "any text");
            // a mark as stamped has its month
            case LAST_TEST_MARK -> new TemplateWords(
                    word -> word.chars().anyMatch(Character::isDigit) || word.equalsIgnoreCase("none"),
                    "none"::equalsIgnoreCase, "none: what is stamped is read as it stands");
            default -> known(ColumnSorts.WORDS.get(column));
        };
    }

    private static boolean isSpecification(String word) {
        return Specification.tryParse(word) instanceof ParseResult.Parsed<Specification>;
    }

    private static TemplateWords status(List<String> known) {
        return new TemplateWords(word -> StatusReader.wordsIn(word).stream().anyMatch(known::contains),
                word -> known.containsAll(StatusReader.wordsIn(word)),
                "one or more, apart by ;, of " + String.join(", ", known));
    }

    private static TemplateWords known(@Nullable List<String> known) {
        if (known == null) {
            return new TemplateWords(word -> false, word -> true, "any text");
        }
        Predicate<String> isKnown = word -> known.stream().anyMatch(word::equalsIgnoreCase);
        return new TemplateWords(isKnown, isKnown, "one of " + String.join(", ", known));
    }
}
