package org.collarbook.access;

import org.jspecify.annotations.Nullable;
import org.springframework.core.MethodParameter;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;

/** Gives a controller method its {@link Caller} or {@link CustomerScope}. */
class CallerArgument implements HandlerMethodArgumentResolver {

    @Override
    public boolean supportsParameter(MethodParameter parameter) {
        return parameter.getParameterType() == Caller.class || parameter.getParameterType() == CustomerScope.class;
    }

    @Override
    public Object resolveArgument(MethodParameter parameter, @Nullable ModelAndViewContainer container,
            NativeWebRequest request, @Nullable WebDataBinderFactory binder) {
        var authentication = SecurityContextHolder.getContext().getAuthentication();
        if (authentication == null || !(authentication.getPrincipal() instanceof Caller caller)) {
            throw new IllegalStateException("an endpoint that asks who is calling is open to all");
        }
        return parameter.getParameterType() == Caller.class ? caller : caller.scope();
    }
}
