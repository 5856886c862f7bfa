package org.collarbook.intake.files;

import java.io.IOException;

import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

import org.jspecify.annotations.Nullable;

/** Walks over the tags of one part. Entities of a document's own are refused, so none can fetch or multiply anything. */
final class PartReader implements AutoCloseable {

    private static final XMLInputFactory XML = xml();

    private final Part part;
    private final XMLStreamReader tags;

    PartReader(Part part) {
        this.part = part;
        try {
            tags = XML.createXMLStreamReader(part);
        } catch (XMLStreamException broken) {
            throw broken(part);
        }
    }

    private static XMLInputFactory xml() {
        var xml = XMLInputFactory.newDefaultFactory();
        xml.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        xml.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        xml.setProperty("jdk.xml.dtd.support", "deny");
        // the JDK's bounds are for documents with entities; how much a part may be is bounded by Budget and Part
        xml.setProperty("jdk.xml.maxGeneralEntitySizeLimit", "0");
        xml.setProperty("jdk.xml.totalEntitySizeLimit", "0");
        return xml;
    }

    private static RuntimeException broken(Part part) {
        return FileFault.brokenWorkbook(part.name() + " is no well-formed XML without a document type");
    }

    /** The next event as {@link XMLStreamConstants} has it; the end of the part is {@code END_DOCUMENT}. */
    int next() {
        part.used();
        try {
            int event = tags.next();
            if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.ENTITY_REFERENCE) {
                throw broken(part);
            }
            return event;
        } catch (XMLStreamException broken) {
            throw broken(part);
        }
    }

    /** Goes on to the next opening tag; false at the end of the part. */
    boolean toTag() {
        for (int event = next(); event != XMLStreamConstants.END_DOCUMENT; event = next()) {
            if (event == XMLStreamConstants.START_ELEMENT) {
                return true;
            }
        }
        return false;
    }

    boolean isAt(String name) {
        return tags.getLocalName().equals(name);
    }

    String name() {
        return tags.getLocalName();
    }

    /** Of the tag it is at; those of a namespace are not looked at. */
    @Nullable
    String get(String attribute) {
        return tags.getAttributeValue("", attribute) == null
                ? tags.getAttributeValue(null, attribute)
                : tags.getAttributeValue("", attribute);
    }

    /** What {@code r:id} says, in either of the two namespaces of ISO/IEC 29500. */
    @Nullable
    String relation() {
        for (int i = 0; i < tags.getAttributeCount(); i++) {
            var namespace = tags.getAttributeNamespace(i);
            if (tags.getAttributeLocalName(i).equals("id") && namespace != null && !namespace.isEmpty()) {
                return tags.getAttributeValue(i);
            }
        }
        return null;
    }

    /** The letters up to the closing tag of the element that it is at; of rich text all runs, but no reading aids. */
    String text() {
        var text = new StringBuilder();
        int depth = 1;
        int aside = 0;
        while (depth > 0) {
            switch (next()) {
                case XMLStreamConstants.START_ELEMENT -> {
                    depth++;
                    aside = aside > 0 || isAt("rPh") ? aside + 1 : 0;
                }
                case XMLStreamConstants.END_ELEMENT -> {
                    depth--;
                    aside = Math.max(0, aside - 1);
                }
                case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA, XMLStreamConstants.SPACE -> {
                    if (aside == 0) {
                        append(text);
                    }
                }
                case XMLStreamConstants.END_DOCUMENT -> throw broken(part);
                default -> {
                    // comments and processing instructions say nothing
                }
            }
        }
        return text.toString();
    }

    private void append(StringBuilder text) {
        if (text.length() + tags.getTextLength() > HandedIn.LONGEST_ROW) {
            throw FileFault.brokenWorkbook("a text of " + part.name() + " is longer than " + HandedIn.LONGEST_ROW
                    + " characters");
        }
        text.append(tags.getTextCharacters(), tags.getTextStart(), tags.getTextLength());
    }

    @Override
    public void close() throws IOException {
        part.close();
    }
}
