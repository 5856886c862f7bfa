-- Whoever calls by an issuer's token has no row in api_key, as V0129 says of keys and feeds.
alter table notice_subscription drop constraint notice_subscription_created_by_fkey;
