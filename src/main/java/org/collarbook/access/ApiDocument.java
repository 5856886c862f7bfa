package org.collarbook.access;

import java.time.YearMonth;
import java.util.List;
import java.util.Locale;

import org.collarbook.platform.Inputs;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springdoc.core.customizers.OperationCustomizer;
import org.springdoc.core.utils.SpringDocUtils;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.web.bind.annotation.RequestMapping;

import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.info.License;
import io.swagger.v3.oas.models.media.ArraySchema;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.IntegerSchema;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.ObjectSchema;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.security.SecurityRequirement;
import io.swagger.v3.oas.models.security.SecurityScheme;
import io.swagger.v3.oas.models.servers.Server;

/** What the served API document says of every endpoint alike: the key, and how a refusal looks. */
@Configuration(proxyBeanMethods = false)
class ApiDocument {

    private static final String KEY = "key";

    static {
        SpringDocUtils.getConfig().addRequestWrapperToIgnore(Caller.class, CustomerScope.class, Inputs.class)
                .replaceWithSchema(YearMonth.class, new StringSchema().pattern("^\\d{4}-\\d{2}$").example("2027-03"));
    }

    @Bean
    OpenAPI document() {
        return new OpenAPI().addServersItem(new Server().url("/").description("Where this document is served"))
                .info(new Info().title("Collarbook").version("0.1.0")
                        .description(
                                "The register of refillable LP-gas cylinders and bulk tanks: what is due, what may be"
                                        + " filled, and why. Conventions: api/conventions.md.")
                        .license(new License().name("Apache-2.0")
                                .url("https://www.apache.org/licenses/LICENSE-2.0.txt")))
                .components(new Components().addSecuritySchemes(KEY,
                        new SecurityScheme().type(SecurityScheme.Type.HTTP).scheme("bearer")
                                .description("An API key: cb_ and 43 characters")))
                .addSecurityItem(new SecurityRequirement().addList(KEY));
    }

    /** RFC 9457, with our members. */
    private static Schema<?> problem(ApiExamples examples) {
        var error = new ObjectSchema().addProperty("pointer", new StringSchema())
                .addProperty("code", new StringSchema())
                .addProperty("found", new StringSchema()).addProperty("accepted", new StringSchema());
        var problem = new ObjectSchema();
        problem.setExample(examples.problem());
        problem.setRequired(List.of("type", "title", "status", "code"));
        return problem.description("A refusal (RFC 9457); nothing was changed")
                .addProperty("type", new StringSchema()).addProperty("title", new StringSchema())
                .addProperty("status", new IntegerSchema()).addProperty("code", new StringSchema())
                .addProperty("detail", new StringSchema()).addProperty("errors", new ArraySchema().items(error));
    }

    @Bean
    OpenApiCustomizer refusals() {
        var body = new Content().addMediaType("application/problem+json",
                new MediaType().schema(new Schema<>().$ref("#/components/schemas/Problem")));
        var examples = new ApiExamples();
        return document -> {
            // here, since springdoc drops what nothing refers to before it asks anybody
            document.getComponents().addSchemas("Problem", problem(examples));
            document.getPaths().forEach((path, item) -> item.readOperationsMap().forEach((method, operation) -> {
                operation.setOperationId(name(method.name(), path));
                examples.add(operation);
                operation.getResponses()
                        .addApiResponse("4XX",
                                new ApiResponse().description("Refused; nothing was changed").content(body))
                        .addApiResponse("5XX", new ApiResponse().description("A fault, or too busy").content(body));
            }));
        };
    }

    /** A file that a method writes itself is served all the same. */
    @Bean
    OperationCustomizer files() {
        return (operation, served) -> {
            var mapping = AnnotatedElementUtils.findMergedAnnotation(served.getMethod(), RequestMapping.class);
            var answered = operation.getResponses().get("200");
            if (mapping != null && answered != null && served.getReturnType().getParameterType() == void.class) {
                var content = answered.getContent() == null ? new Content() : answered.getContent();
                for (var type : mapping.produces()) {
                    content.addMediaType(type, new MediaType().schema(new StringSchema().format("binary")));
                }
                answered.setContent(content);
            }
            return operation;
        };
    }

    /** {@code GET /api/containers/{id}/movements} becomes {@code getContainersByIdMovements}, whatever method serves it. */
    private static String name(String method, String path) {
        var name = new StringBuilder(method.toLowerCase(Locale.ROOT));
        for (var step : path.replaceFirst("^/api", "").replace("{", "by-").split("[/}-]")) {
            if (!step.isEmpty()) {
                name.append(Character.toUpperCase(step.charAt(0))).append(step.substring(1));
            }
        }
        return name.toString();
    }
}
