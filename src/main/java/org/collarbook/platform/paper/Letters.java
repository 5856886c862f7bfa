package org.collarbook.platform.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.SecureRandom;
import java.text.Normalizer;
import java.util.Objects;
import java.util.Random;

import com.lowagie.text.Chunk;
import com.lowagie.text.Font;
import com.lowagie.text.SplitCharacter;
import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.DefaultSplitCharacter;
import com.lowagie.text.pdf.PdfChunk;

/**
 * The letters of one sheet: Latin, Greek, Cyrillic and Hebrew. What the font has no shape for is printed as a box, for
 * the library leaves it out without a word, and another name or serial would stand there.
 */
public final class Letters {

    public static final String NO_SHAPE = "□";

    private static final byte[] REGULAR = font("Sans-Regular");
    private static final byte[] BOLD = font("Sans-Bold");
    private static final byte[] EVEN = font("Mono-Regular");

    /** A date or a specification is not parted at its hyphens. */
    private static final SplitCharacter NOT_BEFORE_DIGITS = new DefaultSplitCharacter() {
        @Override
        public boolean isSplitCharacter(int start, int current, int end, char[] text, PdfChunk[] chunk) {
            boolean within = text[current] == '-' && current + 1 < end && Character.isDigit(text[current + 1]);
            return !within && super.isSplitCharacter(start, current, end, text, chunk);
        }
    };

    private final BaseFont regular;
    private final BaseFont bold;
    private final BaseFont even;
    private boolean leftOut;

    public Letters(long seed) {
        regular = embedded("LiberationSans-Regular.ttf", REGULAR, seed);
        bold = embedded("LiberationSans-Bold.ttf", BOLD, seed + 1);
        even = embedded("LiberationMono-Regular.ttf", EVEN, seed + 2);
    }

    public Chunk text(String text, float size) {
        return chunk(text, new Font(regular, size));
    }

    public Chunk strong(String text, float size) {
        return chunk(text, new Font(bold, size));
    }

    /** Each letter as wide as any other, as hashes and ids are read one by one. */
    public Chunk even(String text, float size) {
        return chunk(text, new Font(even, size));
    }

    private Chunk chunk(String text, Font font) {
        return new Chunk(printable(text), font).setSplitCharacter(NOT_BEFORE_DIGITS);
    }

    public BaseFont regular() {
        return regular;
    }

    /** Whether a box has taken some letter's place. */
    public boolean hasLeftOut() {
        return leftOut;
    }

    public String printable(String text) {
        var shown = new StringBuilder();
        Normalizer.normalize(text, Normalizer.Form.NFC).codePoints().forEach(letter -> {
            if (letter == '\n' || regular.charExists(letter) && bold.charExists(letter)) {
                shown.appendCodePoint(letter);
            } else if (Character.isWhitespace(letter) || Character.isISOControl(letter)) {
                shown.append(' ');
            } else {
                leftOut = true;
                shown.append(NO_SHAPE);
            }
        });
        return shown.toString();
    }

    private static BaseFont embedded(String name, byte[] bytes, long seed) {
        try {
            var font = BaseFont.createFont(name, BaseFont.IDENTITY_H, BaseFont.EMBEDDED, false, bytes, null);
            font.setSecureRandom(new NameOfSubset(seed));
            return font;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] font(String weight) {
        try (InputStream file = Letters.class.getResourceAsStream("/liberation/Liberation" + weight + ".ttf")) {
            return Objects.requireNonNull(file, "the fonts of openpdf-fonts-extra").readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The six letters before the name of an embedded font: drawn anew each time, the same list would be another file. */
    private static final class NameOfSubset extends SecureRandom {

        private static final long serialVersionUID = 1;

        private final Random seeded;

        NameOfSubset(long seed) {
            seeded = new Random(seed);
        }

        @Override
        public double nextDouble() {
            return seeded.nextDouble();
        }
    }
}
