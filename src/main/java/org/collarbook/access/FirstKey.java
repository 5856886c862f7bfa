package org.collarbook.access;

import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * Prints an administrator key on the first start on an empty database, and on any start with
 * {@code --collarbook.access.issue-administrator-key=true}. The key is one line of standard output and stands nowhere
 * else: only its hash is kept. Printed before the first request is served.
 */
@Component
class FirstKey implements SmartInitializingSingleton {

    private final Keys keys;
    private final boolean issueAnother;

    FirstKey(Keys keys, @Value("${collarbook.access.issue-administrator-key:false}") boolean issueAnother) {
        this.keys = keys;
        this.issueAnother = issueAnother;
    }

    @Override
    public void afterSingletonsInstantiated() {
        var key = ApiKey.generate();
        if (keys.issueFirst(key)) {
            print(key);
        } else if (issueAnother) {
            keys.issue(key, KeyGrant.administrator("administrator, issued at start"), null);
            print(key);
        }
    }

    private static void print(ApiKey key) {
        System.out.println(key.text());
    }
}
