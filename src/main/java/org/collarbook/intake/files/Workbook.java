package org.collarbook.intake.files;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

import org.jspecify.annotations.Nullable;

/**
 * A workbook (ISO/IEC 29500, SpreadsheetML) spooled to a file of its own, since a zip is read from its end; gone when it
 * is closed. Names of parts are taken from the relations, never guessed.
 */
final class Workbook implements Closeable {

    private final Path file;
    private final ZipFile zip;
    private final Budget budget;
    private final List<Sheet> sheets = new ArrayList<>();
    private final Map<String, Relation> relations;
    private boolean countsFrom1904;
    private @Nullable CellStyles styles;
    private @Nullable SharedTexts texts;

    /** A sheet of cells; a chart is none. */
    record Sheet(String name, boolean hidden, String part) {}

    private record Relation(String type, String target) {

        boolean isTo(String kind) {
            return type.endsWith("/" + kind);
        }
    }

    private Workbook(Path file, ZipFile zip, Budget budget) throws IOException {
        this.file = file;
        this.zip = zip;
        this.budget = budget;
        var main = relations("").values().stream().filter(relation -> relation.isTo("officeDocument")).findFirst()
                .orElseThrow(() -> noWorkbook("a zip without a workbook in it"));
        if (!main.target.endsWith(".xml")) {
            throw noWorkbook("a document of another form, such as .xlsb");
        }
        relations = relations(main.target);
        read(main.target);
    }

    static Workbook spooled(InputStream content, Budget budget) throws IOException {
        var file = Files.createTempFile("ledger", ".xlsx");
        ZipFile zip = null;
        try {
            Files.copy(content, file, StandardCopyOption.REPLACE_EXISTING);
            ZipDirectory.requireShort(file);
            zip = new ZipFile(file.toFile());
            return new Workbook(file, zip, budget);
        } catch (IOException | RuntimeException refused) {
            if (zip != null) {
                zip.close();
            }
            Files.deleteIfExists(file);
            if (refused instanceof ZipException) {
                throw FileFault.brokenWorkbook("the zip is damaged or cut off");
            }
            throw refused;
        }
    }

    private RuntimeException noWorkbook(String found) {
        boolean openDocument = zip.getEntry("content.xml") != null && zip.getEntry("mimetype") != null;
        return FileFault.of("NO_WORKBOOK", "The file is a zip, but no workbook that can be read.",
                openDocument ? "an OpenDocument file (.ods)" : found,
                "a workbook saved as .xlsx, or CSV in UTF-8, gzipped or not");
    }

    private Map<String, Relation> relations(String of) throws IOException {
        int slash = of.lastIndexOf('/') + 1;
        var relations = new HashMap<String, Relation>();
        var part = of.substring(0, slash) + "_rels/" + of.substring(slash) + ".rels";
        if (zip.getEntry(part) == null) {
            return relations;
        }
        try (var tags = open(part)) {
            while (tags.toTag()) {
                var id = tags.get("Id");
                var type = tags.get("Type");
                var target = tags.get("Target");
                if (tags.isAt("Relationship") && id != null && type != null && target != null
                        && !"External".equals(tags.get("TargetMode"))) {
                    relations.put(id, new Relation(type, resolved(of, target)));
                }
            }
        }
        return relations;
    }

    /** A target is relative to the part that names it, or begins at the root. */
    private static String resolved(String from, String target) {
        try {
            return URI.create("/" + from).resolve(target).getPath().substring(1);
        } catch (IllegalArgumentException | IndexOutOfBoundsException unreadable) {
            throw FileFault.brokenWorkbook("a relation leads nowhere");
        }
    }

    private void read(String main) throws IOException {
        try (var tags = open(main)) {
            while (tags.toTag()) {
                if (tags.isAt("workbookPr")) {
                    var date1904 = tags.get("date1904");
                    countsFrom1904 = "1".equals(date1904) || "true".equals(date1904);
                } else if (tags.isAt("sheet")) {
                    var name = tags.get("name");
                    var state = tags.get("state");
                    var relation = relations.get(String.valueOf(tags.relation()));
                    if (name != null && relation != null && relation.isTo("worksheet")) {
                        sheets.add(new Sheet(name, state != null && !state.equals("visible"), relation.target));
                    }
                }
            }
        }
    }

    PartReader open(String part) throws IOException {
        var entry = zip.getEntry(part);
        if (entry == null) {
            throw FileFault.brokenWorkbook("it has no part " + part);
        }
        return new PartReader(new Part(zip.getInputStream(entry), entry, budget));
    }

    Sheet sheet(@Nullable String wanted) throws IOException {
        return new SheetChoice(this, sheets).of(wanted);
    }

    boolean countsFrom1904() {
        return countsFrom1904;
    }

    CellStyles styles() throws IOException {
        var known = styles;
        if (known == null) {
            known = CellStyles.read(partOf("styles"), this);
            styles = known;
        }
        return known;
    }

    SharedTexts texts() throws IOException {
        var known = texts;
        if (known == null) {
            known = SharedTexts.spooled(partOf("sharedStrings"), this);
            texts = known;
        }
        return known;
    }

    private @Nullable String partOf(String kind) {
        return relations.values().stream().filter(relation -> relation.isTo(kind)).map(Relation::target).findFirst()
                .orElse(null);
    }

    @Override
    public void close() throws IOException {
        if (texts != null) {
            texts.close();
            texts = null;
        }
        zip.close();
        Files.deleteIfExists(file);
    }
}
