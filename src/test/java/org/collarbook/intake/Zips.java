package org.collarbook.intake;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Zips made by hand, for what no library would write. */
final class Zips {

    private Zips() {}

    static byte[] of(Map<String, String> parts) {
        var out = new ByteArrayOutputStream();
        try (var zip = new ZipOutputStream(out)) {
            for (var part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
                zip.closeEntry();
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return out.toByteArray();
    }

    /** A workbook of one sheet, whose part is given. */
    static byte[] workbook(String sheet) {
        var relation = "<Relationships><Relationship Id=\"r1\" Type=\"http://purl.oclc.org/ooxml/officeDocument/"
                + "relationships/%s\" Target=\"%s\"/></Relationships>";
        var parts = new LinkedHashMap<String, String>();
        parts.put("_rels/.rels", relation.formatted("officeDocument", "book.xml"));
        parts.put("book.xml",
                "<workbook xmlns:r=\"urn:r\"><sheets><sheet name=\"a\" r:id=\"r1\"/></sheets></workbook>");
        parts.put("_rels/book.xml.rels", relation.formatted("worksheet", "sheets/one.xml"));
        parts.put("sheets/one.xml", sheet);
        return of(parts);
    }
}
