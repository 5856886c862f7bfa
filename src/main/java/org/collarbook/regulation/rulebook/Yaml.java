package org.collarbook.regulation.rulebook;

import java.util.Map;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.representer.Representer;
import org.yaml.snakeyaml.resolver.Resolver;

/**
 * Every scalar is a text here: YAML's own guesses would turn the specification 3E5 into a number, NO into false and a
 * date into an instant.
 */
final class Yaml {

    private Yaml() {}

    private static final class NoGuesses extends Resolver {

        @Override
        protected void addImplicitResolvers() {
            // none, so that each scalar stays a text
        }
    }

    static Map<?, ?> read(String file, String text) {
        LoaderOptions options = new LoaderOptions();
        options.setAllowDuplicateKeys(false);
        options.setCodePointLimit(20_000_000);
        DumperOptions dumper = new DumperOptions();
        try {
            Object root = new org.yaml.snakeyaml.Yaml(new SafeConstructor(options), new Representer(dumper), dumper,
                    options,
                    new NoGuesses()).load(text);
            if (root instanceof Map<?, ?> map) {
                return map;
            }
        } catch (YAMLException unreadable) {
            throw new RuleBookException(file, "not readable as YAML: " + unreadable.getMessage(), unreadable);
        }
        throw new RuleBookException(file, "expected a mapping at the top");
    }
}
