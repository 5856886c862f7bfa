package org.collarbook.portal.notices;

import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.PathItem;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.IntegerSchema;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.parameters.HeaderParameter;
import io.swagger.v3.oas.models.parameters.RequestBody;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;

/** The request that an endpoint receives, in the served API document ("webhooks" of OpenAPI 3.1). */
@Configuration(proxyBeanMethods = false)
class NoticeDocument {

    @Bean
    OpenApiCustomizer notices() {
        return document -> document.addWebhooks("notice", new PathItem().post(new Operation()
                .operationId("receiveNotice").addTagsItem("Notices")
                .summary("What a customer's endpoint is sent; signed by Standard Webhooks 1.0.0")
                .addParametersItem(header("webhook-id", new StringSchema().format("uuid"),
                        "The notice's id, the same whenever it is sent again"))
                .addParametersItem(header("webhook-timestamp", new IntegerSchema().format("int64"),
                        "When this attempt was made, in seconds since 1970"))
                .addParametersItem(header("webhook-signature", new StringSchema(),
                        "v1, and the base64 of HMAC-SHA256 over id.timestamp.body; one per valid secret, with a space"
                                + " between"))
                .requestBody(new RequestBody().required(true).content(new Content().addMediaType("application/json",
                        new MediaType().schema(new Schema<>().$ref("#/components/schemas/Notice")))))
                .responses(new ApiResponses()
                        .addApiResponse("2XX", new ApiResponse().description("Delivered"))
                        .addApiResponse("410", new ApiResponse()
                                .description("No more: the subscription is switched off"))
                        .addApiResponse("default", new ApiResponse().description("Sent again later")))));
    }

    private static HeaderParameter header(String name, Schema<?> schema, String says) {
        var header = new HeaderParameter();
        header.name(name).required(true).schema(schema).description(says);
        return header;
    }
}
