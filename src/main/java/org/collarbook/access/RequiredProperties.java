package org.collarbook.access;

import java.util.Arrays;
import java.util.Iterator;

import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

import com.fasterxml.jackson.annotation.JsonProperty;

import io.swagger.v3.core.converter.AnnotatedType;
import io.swagger.v3.core.converter.ModelConverter;
import io.swagger.v3.core.converter.ModelConverterContext;
import io.swagger.v3.core.util.Json;
import io.swagger.v3.oas.models.media.Schema;

/**
 * Says in the API document which properties are always there: those of a record that are not {@code @Nullable}, which
 * springdoc does not read. A request's are all nullable in the code, since each that is missing is told by name.
 */
@Component
class RequiredProperties implements ModelConverter {

    @Override
    @Nullable
    @SuppressWarnings("rawtypes")
    public Schema resolve(AnnotatedType type, ModelConverterContext context, Iterator<ModelConverter> chain) {
        var schema = chain.hasNext() ? chain.next().resolve(type, context, chain) : null;
        var raw = type.getType() == null ? null : Json.mapper().constructType(type.getType()).getRawClass();
        if (schema != null && raw != null && raw.isRecord()) {
            var defined = schema.get$ref() == null
                    ? schema
                    : context.getDefinedModels().get(schema.get$ref().substring(schema.get$ref().lastIndexOf('/') + 1));
            if (defined != null && defined.getProperties() != null) {
                require(defined, raw);
            }
        }
        return schema;
    }

    private static void require(Schema<?> schema, Class<?> raw) {
        Arrays.stream(raw.getRecordComponents())
                .filter(component -> !component.getAnnotatedType().isAnnotationPresent(Nullable.class))
                .map(component -> name(component.getName(), component.getAccessor()
                        .getAnnotation(JsonProperty.class)))
                .filter(schema.getProperties()::containsKey)
                .filter(name -> schema.getRequired() == null || !schema.getRequired().contains(name))
                .forEach(schema::addRequiredItem);
    }

    private static String name(String component, @Nullable JsonProperty said) {
        return said == null || said.value().isEmpty() ? component : said.value();
    }
}
