package org.collarbook.platform.web;

import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.MethodParameter;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

/**
 * A query parameter that nobody reads would be taken for a filter that was applied, so it is refused. Known are those in
 * the signature of the method that answers. A method that has {@link Inputs} there tells them with all else that is wrong.
 * What no text of the database can hold is in nothing that is recorded: it is refused before anything is looked up by it.
 */
@Configuration(proxyBeanMethods = false)
class KnownParameters implements WebMvcConfigurer, HandlerInterceptor, HandlerMethodArgumentResolver {

    /** What is elsewhere, a page or a subscribed calendar, is fetched by programs that add words of their own. */
    private static final String OURS = "/api/";

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this);
    }

    @Override
    public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
        resolvers.add(this);
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        if (handler instanceof HandlerMethod by && request.getRequestURI().startsWith(OURS)) {
            var wrong = new Inputs();
            if (request.getAttribute(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE) instanceof Map<?, ?> inPath) {
                inPath.forEach((name, value) -> requireText(String.valueOf(name), String.valueOf(value), wrong));
            }
            // the parts of a form count as parameters too, and whoever takes them looks at each
            if (!isForm(request.getContentType())) {
                request.getParameterMap().forEach((name, values) -> List.of(values)
                        .forEach(value -> requireText(name, value, wrong)));
                if (!List.of(by.getMethod().getParameterTypes()).contains(Inputs.class)) {
                    wrong.refuse(unknown(request, by.getMethod()).errors());
                }
            }
            wrong.done();
        }
        return true;
    }

    private static void requireText(String name, String value, Inputs wrong) {
        // what the database cannot keep; line ends and tabs are looked for in vain, and refused where they are stored
        if (value.codePoints().anyMatch(c -> c == 0 || Character.getType(c) == Character.SURROGATE)) {
            wrong.refuse(name, "INVALID_TEXT", value, "text without NUL or half of a character");
        }
    }

    private static boolean isForm(@Nullable String contentType) {
        return contentType != null && contentType.regionMatches(true, 0, "multipart/", 0, "multipart/".length());
    }

    @Override
    public boolean supportsParameter(MethodParameter parameter) {
        return parameter.getParameterType() == Inputs.class;
    }

    @Override
    public Inputs resolveArgument(MethodParameter parameter, @Nullable ModelAndViewContainer container,
            NativeWebRequest request, @Nullable WebDataBinderFactory binder) {
        var method = parameter.getMethod();
        var asked = request.getNativeRequest(HttpServletRequest.class);
        if (method == null || asked == null) {
            throw new IllegalStateException("asked for the parameters of no request");
        }
        return unknown(asked, method);
    }

    private static Inputs unknown(HttpServletRequest request, Method method) {
        var wrong = new Inputs();
        var asked = request.getParameterMap().keySet();
        if (asked.isEmpty()) {
            return wrong;
        }
        var known = Stream.concat(Arrays.stream(method.getParameters()).flatMap(KnownParameters::names),
                Stream.of(Formats.PARAMETER)).toList();
        for (var name : new TreeSet<>(asked)) {
            if (!known.contains(name)) {
                wrong.refuse(name, "UNKNOWN_PARAMETER", request.getParameter(name),
                        "one of " + String.join(", ", known));
            }
        }
        return wrong;
    }

    private static Stream<String> names(Parameter parameter) {
        if (parameter.isAnnotationPresent(ParameterObject.class)) {
            return Arrays.stream(parameter.getType().getRecordComponents()).map(RecordComponent::getName);
        }
        var named = parameter.getAnnotation(RequestParam.class);
        return named == null
                ? Stream.empty()
                : Stream.of(named.name().isEmpty() ? parameter.getName() : named.name());
    }
}
