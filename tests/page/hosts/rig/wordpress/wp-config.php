<?php
// A site that lives as long as its test: nothing leaves this computer, nothing runs by itself.

define('DB_NAME', 'blog');
define('DB_USER', 'root');
define('DB_PASSWORD', '');
define('DB_HOST', 'localhost:' . getenv('BLOG_SOCKET'));
define('DB_CHARSET', 'utf8mb4');
define('WP_HOME', getenv('BLOG_ADDRESS'));
define('WP_SITEURL', WP_HOME);

define('WP_HTTP_BLOCK_EXTERNAL', true);
define('AUTOMATIC_UPDATER_DISABLED', true);
define('DISABLE_WP_CRON', true);
define('WP_DEBUG', false);

$table_prefix = 'wp_';
require_once __DIR__ . '/wp-settings.php';
